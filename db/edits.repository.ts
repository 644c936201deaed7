import type { Database } from 'better-sqlite3';
import type { RowTable } from './project-rows.ts';
import type { StoredRow } from './rows.repository.ts';
import { prepared } from './statements.ts';

/** The log of edits. Entries are added and marked, never taken away. */

/**
 * What an edit did to one row. For a new row `before` is null, for a deleted one `after`; those hold the whole row,
 * otherwise both hold only the columns that differ. `id` is the project's own for its settings.
 */
export interface RowEdit {
  readonly table: RowTable | 'settings';
  readonly id: number;
  readonly before: StoredRow | null;
  readonly after: StoredRow | null;
}

export interface LoggedEdit {
  readonly id: number;
  readonly label: string;
  readonly rows: readonly RowEdit[];
}

/** What undo and redo would do, in words; null when there is nothing to do. */
export interface UndoMenu {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
}

const sql = {
  insert: `INSERT INTO edit (project_id, revision, label, rows, at, state) VALUES (?, ?, ?, ?, ?, 'done')`,
  lastDone: `SELECT id, label, rows FROM edit WHERE project_id = ? AND state = 'done' ORDER BY id DESC LIMIT 1`,
  firstUndone: `SELECT id, label, rows FROM edit WHERE project_id = ? AND state = 'undone' ORDER BY id LIMIT 1`,
  lastDoneLabel: `SELECT label FROM edit WHERE project_id = ? AND state = 'done' ORDER BY id DESC LIMIT 1`,
  firstUndoneLabel: `SELECT label FROM edit WHERE project_id = ? AND state = 'undone' ORDER BY id LIMIT 1`,
  mark: `UPDATE edit SET state = ? WHERE id = ?`,
  dropUndone: `UPDATE edit SET state = 'dropped' WHERE project_id = ? AND state = 'undone'`,
};

interface EditRecord {
  readonly id: number;
  readonly label: string;
  readonly rows: string;
}

function toLoggedEdit(record: EditRecord | undefined): LoggedEdit | undefined {
  return record === undefined ? undefined : { ...record, rows: JSON.parse(record.rows) as RowEdit[] };
}

export function insertEdit(
  db: Database,
  projectId: number,
  edit: {
    readonly revision: number;
    readonly label: string;
    readonly rows: readonly RowEdit[];
    readonly at: string;
  },
): void {
  prepared(db, sql.insert).run(projectId, edit.revision, edit.label, JSON.stringify(edit.rows), edit.at);
}

/** The edit that undo would take back. */
export function lastDoneEdit(db: Database, projectId: number): LoggedEdit | undefined {
  return toLoggedEdit(prepared(db, sql.lastDone).get(projectId) as EditRecord | undefined);
}

/** The edit that redo would do again. */
export function firstUndoneEdit(db: Database, projectId: number): LoggedEdit | undefined {
  return toLoggedEdit(prepared(db, sql.firstUndone).get(projectId) as EditRecord | undefined);
}

export function markEdit(db: Database, editId: number, state: 'done' | 'undone'): void {
  prepared(db, sql.mark).run(state, editId);
}

/** A new edit ends what could be redone; the entries stay in the log. */
export function dropUndoneEdits(db: Database, projectId: number): void {
  prepared(db, sql.dropUndone).run(projectId);
}

export function readUndoMenu(db: Database, projectId: number): UndoMenu {
  const undoLabel = prepared(db, sql.lastDoneLabel).pluck().get(projectId) as string | undefined;
  const redoLabel = prepared(db, sql.firstUndoneLabel).pluck().get(projectId) as string | undefined;
  return {
    canUndo: undoLabel !== undefined,
    canRedo: redoLabel !== undefined,
    undoLabel: undoLabel ?? null,
    redoLabel: redoLabel ?? null,
  };
}
