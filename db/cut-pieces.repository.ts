import type { Database } from 'better-sqlite3';
import { prepared } from './statements.ts';

/** Which pieces of which layouts have been cut. No revision and no undo: sawing happens outside the program. */

export interface PiecePlace {
  /** The layout's key. */
  readonly layout: string;
  /** Which of the equal sheets, from 0. */
  readonly sheet: number;
  /** Which of the layout's parts in the order of its tree, from 0. */
  readonly piece: number;
}

const sql = {
  ofProject: `SELECT layout, sheet, piece FROM cut_piece WHERE project_id = ? ORDER BY layout, sheet, piece`,
  add: `INSERT OR IGNORE INTO cut_piece (project_id, layout, sheet, piece, at) VALUES (?, ?, ?, ?, ?)`,
  remove: `DELETE FROM cut_piece WHERE project_id = ? AND layout = ? AND sheet = ? AND piece = ?`,
};

export function readCutPieces(db: Database, projectId: number): PiecePlace[] {
  return prepared(db, sql.ofProject).all(projectId) as PiecePlace[];
}

/** Marks pieces as cut, or as not cut, in one transaction; those that already are stay as they are. */
export function markPieces(
  db: Database,
  projectId: number,
  pieces: readonly PiecePlace[],
  cut: boolean,
  at: string,
): void {
  db.transaction(() => {
    for (const { layout, sheet, piece } of pieces) {
      if (cut) prepared(db, sql.add).run(projectId, layout, sheet, piece, at);
      else prepared(db, sql.remove).run(projectId, layout, sheet, piece);
    }
  })();
}
