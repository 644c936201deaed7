import type { UnitSystem } from '../server/planning/project-input.ts';
import type { RowValues } from './change.ts';
import type { RowTable } from './project-rows.ts';
import { Refusal } from './refusal.ts';
import type { RowJournal } from './row-journal.ts';
import { millimetreColumn, ROW_LAYOUTS, type RowField } from './row-layouts.ts';
import type { StoredRow } from './rows.repository.ts';

/**
 * How a length cell is read when it is stored: the text that keeps its meaning when the project's units are
 * switched ("600" becomes "600 mm", "=ply + 2" becomes "=ply + 2 mm"), and its millimetres, null when it is a
 * calculation or not readable. A text that is not readable is kept as typed.
 */
export type ReadLengthCell = (
  text: string,
  units: UnitSystem,
) => { readonly text: string; readonly mm: number | null };

/** What the values of a row are read with. */
export interface RowReading {
  readonly journal: RowJournal;
  readonly readLengthCell: ReadLengthCell;
  /** The rows inserted so far by their tempId. */
  readonly newRows: ReadonlyMap<string, { readonly table: RowTable; readonly id: number }>;
  readonly units: UnitSystem;
}

/** The values of a new row, with the initial value of every field that is not given. Throws Refusal. */
export function withInitialValues(table: RowTable, values: RowValues, at: string): RowValues {
  const { fields, one } = ROW_LAYOUTS[table];
  const missing = fields.find((field) => field.initial === undefined && values[field.name] === undefined);
  if (missing !== undefined)
    throw new Refusal('bad-request', `A new ${one} needs its ${missing.words}.`, {
      wayOut: `Give ${missing.name}.`,
      field: `${at}.values.${missing.name}`,
    });
  return { ...Object.fromEntries(fields.map((field) => [field.name, field.initial ?? null])), ...values };
}

/** The columns that given values of a row fill. Throws Refusal when they refer to a row that is not there. */
export function rowColumns(reading: RowReading, table: RowTable, values: RowValues, at: string): StoredRow {
  const { fields } = ROW_LAYOUTS[table];
  const columns: Record<string, string | number | null> = {};
  for (const [name, value] of Object.entries(values)) {
    const field = fields.find((candidate) => candidate.name === name);
    if (field === undefined) throw new RangeError(`rowColumns: ${table} has no field ${name}`);
    const where = `${at}.values.${name}`;
    if (field.kind === 'length') {
      const cell = reading.readLengthCell(String(value), reading.units);
      columns[field.column] = cell.text;
      columns[millimetreColumn(field)] = cell.mm;
    } else if (field.kind === 'parent') {
      columns[field.column] = rowId(reading, field.refersTo as RowTable, String(value), where);
    } else if (field.kind === 'mention') {
      columns[field.column] = mention(reading, field, String(value), where);
    } else columns[field.column] = value as string | number | null;
  }
  return columns;
}

/** A mention of a row that is there, or free text kept as typed; a number that is no row's id is refused. */
function mention(reading: RowReading, field: RowField, text: string, at: string): string {
  const table = field.refersTo as RowTable;
  if (reading.newRows.get(text)?.table === table || /^\d+$/.test(text))
    return String(rowId(reading, table, text, at));
  return text;
}

/** The id of a row that is there, given as such or by the tempId of a row inserted before. Throws Refusal. */
export function rowId(reading: RowReading, table: RowTable, text: string, at: string): number {
  const named = reading.newRows.get(text);
  const id = named?.table === table ? named.id : /^\d{1,15}$/.test(text) ? Number(text) : null;
  if (id === null || reading.journal.read(table, id) === null) {
    const { one, many } = ROW_LAYOUTS[table];
    throw new Refusal('not-found', `The project has no ${one} with the id “${text.slice(0, 40)}”.`, {
      wayOut: `Read the project again to see which ${many} it has.`,
      field: at,
    });
  }
  return id;
}
