import type { Database } from 'better-sqlite3';
import { type ProjectRows, ROW_TABLES, type RowTable } from './project-rows.ts';
import { millimetreColumn, ROW_LAYOUTS, type RowField, type RowLayout } from './row-layouts.ts';
import { prepared } from './statements.ts';

/** The lists of a project. Every statement is made from the constant layouts in `row-layouts.ts`. */

/** A row as it lies in its table, columns by name. Kept whole in the edit log; nobody else looks inside. */
export type StoredRow = Readonly<Record<string, string | number | null>>;

interface Statements {
  readonly readAll: string;
  readonly readOne: string;
  readonly stored: string;
  readonly insert: string;
  readonly update: string;
  readonly remove: string;
  readonly lastPosition: string;
  readonly positionInFront: string;
  readonly idsInOrder: string;
}

const statements = Object.fromEntries(
  ROW_TABLES.map((table) => [table, statementsOf(ROW_LAYOUTS[table])]),
) as Record<RowTable, Statements>;

function statementsOf(layout: RowLayout): Statements {
  const table = layout.sqlName;
  const columns = layout.fields.flatMap(columnsOf);
  const shown = layout.fields.map((field) =>
    field.kind === 'parent'
      ? `CAST(${field.column} AS TEXT) AS ${field.name}`
      : `${field.column} AS "${field.name}"`,
  );
  const show = `SELECT CAST(id AS TEXT) AS id, position, ${shown.join(', ')} FROM ${table}`;
  const all = ['id', 'project_id', 'position', ...columns];
  return {
    readAll: `${show} WHERE project_id = ? ORDER BY position, ${table}.id`,
    readOne: `${show} WHERE project_id = ? AND ${table}.id = ?`,
    stored: `SELECT ${all.join(', ')} FROM ${table} WHERE project_id = ? AND id = ?`,
    insert: `INSERT INTO ${table} (${all.join(', ')}) VALUES (${all.map((column) => `@${column}`).join(', ')})`,
    update: `UPDATE ${table} SET position = @position, ${columns.map((column) => `${column} = @${column}`).join(', ')} WHERE project_id = @project_id AND id = @id`,
    remove: `DELETE FROM ${table} WHERE project_id = ? AND id = ?`,
    lastPosition: `SELECT max(position) FROM ${table} WHERE project_id = ?`,
    positionInFront: `SELECT max(position) FROM ${table} WHERE project_id = ? AND position < ?`,
    idsInOrder: `SELECT id FROM ${table} WHERE project_id = ? ORDER BY position, id`,
  };
}

function columnsOf(field: RowField): string[] {
  return field.kind === 'length' ? [field.column, millimetreColumn(field)] : [field.column];
}

/** Every row of a project, each list in its order. */
export function readRows(db: Database, projectId: number): ProjectRows {
  return Object.fromEntries(
    ROW_TABLES.map((table) => [table, prepared(db, statements[table].readAll).all(projectId)]),
  ) as unknown as ProjectRows;
}

/** One row as it travels, or undefined when the project has no such row. */
export function readRow<Table extends RowTable>(
  db: Database,
  projectId: number,
  table: Table,
  id: number,
): ProjectRows[Table][number] | undefined {
  return prepared(db, statements[table].readOne).get(projectId, id) as ProjectRows[Table][number] | undefined;
}

export function readStoredRow(
  db: Database,
  projectId: number,
  table: RowTable,
  id: number,
): StoredRow | undefined {
  return prepared(db, statements[table].stored).get(projectId, id) as StoredRow | undefined;
}

/** Inserts a row with all its columns; `id: null` takes a new id, which is never one used before. Answers the id. */
export function insertStoredRow(db: Database, table: RowTable, row: StoredRow): number {
  return Number(prepared(db, statements[table].insert).run(row).lastInsertRowid);
}

export function updateStoredRow(db: Database, table: RowTable, row: StoredRow): void {
  prepared(db, statements[table].update).run(row);
}

export function deleteStoredRow(db: Database, projectId: number, table: RowTable, id: number): void {
  prepared(db, statements[table].remove).run(projectId, id);
}

/** Highest position of a list; null when it is empty. */
export function lastPosition(db: Database, projectId: number, table: RowTable): number | null {
  return prepared(db, statements[table].lastPosition).pluck().get(projectId) as number | null;
}

/** Position of the row next in front of `position`; null when there is none. */
export function positionInFront(
  db: Database,
  projectId: number,
  table: RowTable,
  position: number,
): number | null {
  return prepared(db, statements[table].positionInFront).pluck().get(projectId, position) as number | null;
}

export function rowIdsInOrder(db: Database, projectId: number, table: RowTable): number[] {
  return prepared(db, statements[table].idsInOrder).pluck().all(projectId) as number[];
}

/** Ids of the rows whose `field` holds `id`: the steps of a recipe, the parts that mention it. */
export function rowIdsReferringTo(
  db: Database,
  projectId: number,
  table: RowTable,
  field: RowField,
  id: number,
): number[] {
  const { sqlName } = ROW_LAYOUTS[table];
  const value = field.kind === 'parent' ? id : String(id);
  const sql = `SELECT id FROM ${sqlName} WHERE project_id = ? AND ${field.column} = ? ORDER BY position, id`;
  return prepared(db, sql).pluck().all(projectId, value) as number[];
}

/** A cell that holds a calculation over named sizes. */
export interface Calculation {
  readonly table: RowTable;
  readonly field: RowField;
  readonly id: number;
  readonly text: string;
}

const calculationFields = ROW_TABLES.flatMap((table) =>
  ROW_LAYOUTS[table].fields
    .filter(({ kind }) => kind === 'length' || kind === 'count')
    .map((field) => ({
      table,
      field,
      sql: `SELECT id, ${field.column} AS text FROM ${ROW_LAYOUTS[table].sqlName} WHERE project_id = ? AND instr(${field.column}, '=') > 0 ORDER BY position, id`,
    })),
);

/** Every cell of a project whose text starts with an equals sign. */
export function readCalculations(db: Database, projectId: number): Calculation[] {
  return calculationFields.flatMap(({ table, field, sql }) =>
    (prepared(db, sql).all(projectId) as { readonly id: number; readonly text: string }[])
      .filter(({ text }) => text.trimStart().startsWith('='))
      .map((row) => ({ table, field, ...row })),
  );
}

/** Names of the sizes, in the order of their list. */
export function readSizeNames(
  db: Database,
  projectId: number,
): { readonly id: number; readonly name: string }[] {
  const sql = `SELECT id, name FROM ${ROW_LAYOUTS.sizes.sqlName} WHERE project_id = ? ORDER BY position, id`;
  return prepared(db, sql).all(projectId) as { id: number; name: string }[];
}
