import { type ProjectRows, ROW_TABLES, type RowTable, type StoredProject } from '../../db/project-rows.ts';
import type { RowChanges } from '../../db/row-journal.ts';

type AnyRow = { readonly id: string; readonly position: number };

/**
 * The project after an edit, without reading thousands of rows that it did not touch: those stay the very objects they
 * were, which also tells the planner that nothing about them has changed.
 *
 * `edit`: what the edit did to rows of `before`; `revision` and `settings` as they are now. The order is that of
 * `readProject`: by position, then by id.
 */
export function changedProject(
  before: StoredProject,
  edit: RowChanges,
  now: Pick<StoredProject, 'revision' | 'settings'>,
): StoredProject {
  const rows = { ...before.rows } as Record<RowTable, readonly AnyRow[]>;
  for (const table of ROW_TABLES) {
    const changed = edit.changed[table] ?? [];
    const removed = edit.removed[table] ?? [];
    if (changed.length > 0 || removed.length > 0) rows[table] = changedRows(rows[table], changed, removed);
  }
  return { id: before.id, ...now, rows: rows as unknown as ProjectRows };
}

function changedRows(
  before: readonly AnyRow[],
  changed: readonly AnyRow[],
  removed: readonly string[],
): readonly AnyRow[] {
  const byId = new Map(changed.map((row) => [row.id, row]));
  const gone = new Set(removed);
  const rows: AnyRow[] = [];
  for (const row of before) {
    if (gone.has(row.id)) continue;
    rows.push(byId.get(row.id) ?? row);
    byId.delete(row.id);
  }
  rows.push(...byId.values());
  return rows.sort((a, b) => a.position - b.position || Number(a.id) - Number(b.id));
}
