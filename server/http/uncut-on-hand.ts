import type { Database } from 'better-sqlite3';
import { readCutPieces } from '../../db/cut-pieces.repository.ts';
import { sheetKeptFrom } from '../planning/cutting/begun/kept-from.ts';
import type { OnHand } from '../planning/project-input.ts';

/**
 * Rows on hand, by id, that are offcuts of a sheet of which no piece is ticked as cut any more. Someone took the ticks off
 * again, so the offcut is not there; it counts once the sheet is cut.
 */
export function uncutOnHand(db: Database, projectId: number, onHand: readonly OnHand[]): readonly string[] {
  const kept = onHand.filter(({ keptFrom = '' }) => keptFrom !== '');
  if (kept.length === 0) return [];
  const cut = new Set(readCutPieces(db, projectId).map(({ layout, sheet }) => `${layout} ${sheet}`));
  return kept.filter(({ keptFrom = '' }) => !cut.has(sheetKeptFrom(keptFrom))).map(({ id }) => id);
}
