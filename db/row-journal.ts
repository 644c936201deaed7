import type { Database } from 'better-sqlite3';
import type { RowEdit } from './edits.repository.ts';
import type { ProjectRows, RowTable } from './project-rows.ts';
import { readStoredSettings, updateStoredSettings } from './projects.repository.ts';
import {
  deleteStoredRow,
  insertStoredRow,
  readRow,
  readStoredRow,
  type StoredRow,
  updateStoredRow,
} from './rows.repository.ts';

/**
 * Writes to one project within one transaction, keeping what every row was before its first write. At the end
 * `edits` is the exact difference, however often a row was written in between.
 */
export interface RowJournal {
  readonly read: (table: RowTable, id: number) => StoredRow | null;
  readonly insert: (table: RowTable, row: StoredRow) => number;
  readonly update: (table: RowTable, id: number, columns: StoredRow) => void;
  readonly remove: (table: RowTable, id: number) => void;
  readonly updateSettings: (columns: StoredRow) => void;
  readonly edits: () => RowEdit[];
  readonly changes: () => RowChanges;
}

/** The rows that differ from before, as they travel, and the ids of those that are gone. */
export interface RowChanges {
  readonly changed: { readonly [Table in RowTable]?: ProjectRows[Table] };
  readonly removed: { readonly [Table in RowTable]?: readonly string[] };
}

export function openRowJournal(db: Database, projectId: number): RowJournal {
  const rows = new Map<RowTable, Map<number, { readonly before: StoredRow | null; now: StoredRow | null }>>();
  let settings: { readonly before: StoredRow; now: StoredRow } | null = null;

  function entry(table: RowTable, id: number) {
    let ofTable = rows.get(table);
    if (ofTable === undefined) {
      ofTable = new Map();
      rows.set(table, ofTable);
    }
    let found = ofTable.get(id);
    if (found === undefined) {
      const before = readStoredRow(db, projectId, table, id) ?? null;
      found = { before, now: before };
      ofTable.set(id, found);
    }
    return found;
  }

  return {
    read: (table, id) => entry(table, id).now,
    insert(table, row) {
      const id = insertStoredRow(db, table, { id: null, ...row, project_id: projectId });
      const known = rows.get(table)?.get(id);
      const now = { ...row, id, project_id: projectId };
      if (known !== undefined) known.now = now;
      else {
        const ofTable = rows.get(table) ?? new Map();
        rows.set(table, ofTable.set(id, { before: null, now }));
      }
      return id;
    },
    update(table, id, columns) {
      const row = entry(table, id);
      if (row.now === null) throw new RangeError(`row journal: ${table} has no row ${id}`);
      row.now = { ...row.now, ...columns };
      updateStoredRow(db, table, row.now);
    },
    remove(table, id) {
      entry(table, id).now = null;
      deleteStoredRow(db, projectId, table, id);
    },
    updateSettings(columns) {
      if (settings === null) {
        const before = readStoredSettings(db, projectId);
        if (before === undefined) throw new RangeError(`row journal: there is no project ${projectId}`);
        settings = { before, now: before };
      }
      settings.now = { ...settings.now, ...columns };
      updateStoredSettings(db, settings.now);
    },
    edits() {
      const edits: RowEdit[] = [];
      if (settings !== null) edits.push({ table: 'settings', id: projectId, ...difference(settings) });
      for (const [table, ofTable] of rows)
        for (const [id, row] of ofTable) edits.push({ table, id, ...difference(row) });
      return edits.filter((edit) => edit.before !== null || edit.after !== null);
    },
    changes() {
      const changed: Record<string, unknown[]> = {};
      const removed: Record<string, string[]> = {};
      for (const [table, ofTable] of rows) {
        for (const [id, row] of ofTable) {
          const { before, after } = difference(row);
          if (after !== null) {
            changed[table] ??= [];
            changed[table].push(readRow(db, projectId, table, id));
          } else if (before !== null) {
            removed[table] ??= [];
            removed[table].push(String(id));
          }
        }
      }
      return { changed, removed } as RowChanges;
    },
  };
}

/** Whole rows where one was made or deleted, else only the columns that differ; null and null when nothing does. */
function difference(row: { readonly before: StoredRow | null; readonly now: StoredRow | null }) {
  const { before, now } = row;
  if (before === null || now === null) return { before, after: now };
  const columns = Object.keys(now).filter((column) => now[column] !== before[column]);
  if (columns.length === 0) return { before: null, after: null };
  const pick = (from: StoredRow): StoredRow =>
    Object.fromEntries(columns.map((column) => [column, from[column] ?? null]));
  return { before: pick(before), after: pick(now) };
}
