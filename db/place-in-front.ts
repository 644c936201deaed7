import type { Database } from 'better-sqlite3';
import type { RowTable } from './project-rows.ts';
import type { RowJournal } from './row-journal.ts';
import { lastPosition, positionInFront, rowIdsInOrder } from './rows.repository.ts';

/**
 * A position for a row in front of row `before`, or at the end when that is null, so that no other row has to
 * move: between the positions of its two neighbours. When no number is left between them, after some fifty rows
 * put in one by one at the same spot, the list is numbered afresh.
 *
 * `following` rows are about to be put in at the same spot, and get their share of the room; `moved` is the row
 * that is being moved, which stays where it is when it is in front of `before` already.
 */
export function placeInFront(
  db: Database,
  projectId: number,
  journal: RowJournal,
  table: RowTable,
  before: number | null,
  { following = 0, moved }: { readonly following?: number; readonly moved?: number },
): number {
  const positionOf = (id: number): number => Number(journal.read(table, id)?.position);
  const own = moved === undefined ? null : positionOf(moved);
  if (before === null) {
    const last = lastPosition(db, projectId, table);
    return last === null ? 1 : last === own ? own : Math.floor(last) + 1;
  }
  const next = positionOf(before);
  const previous = positionInFront(db, projectId, table, next);
  if (previous !== null && previous === own) return own;
  const between = previous === null ? next - following - 1 : previous + (next - previous) / (following + 2);
  if (between < next && (previous === null || between > previous)) return between;

  rowIdsInOrder(db, projectId, table).forEach((id, index) => {
    journal.update(table, id, { position: index + 1 });
  });
  return positionOf(before) - (following + 1) / (following + 2);
}
