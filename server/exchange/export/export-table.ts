/** The tables that can be taken out of a project, in the order they are offered. */
export const EXPORT_TABLES = [
  'parts',
  'named-sizes',
  'part-groups',
  'cut-list',
  'sheets',
  'sheet-pieces',
  'saw-cuts',
  'banding-strips',
  'banding-rolls',
  'finish-coats',
  'coat-calendar',
  'buy-list',
  'costs',
  'order-list',
  'ledger',
  'payments',
  'problems',
] as const;
export type ExportTableName = (typeof EXPORT_TABLES)[number];

/** Null is an unknown or an absent value and stays an empty cell, never a zero. */
export type ExportCell = string | number | null;

export interface ExportColumn {
  /** With the unit where the cells have one: "Length (mm)". */
  readonly heading: string;
  /** Money is in major units, with exactly the currency's decimals. */
  readonly kind: 'text' | 'number' | 'money';
  /** Decimals a spreadsheet shows; the cell keeps all it has. Null shows what is there. */
  readonly decimals: number | null;
  /** Width in a spreadsheet, characters. */
  readonly width: number;
}

/** One table ready to be written in any format. */
export interface ExportTable {
  readonly name: ExportTableName;
  readonly title: string;
  readonly columns: readonly ExportColumn[];
  readonly rows: readonly (readonly ExportCell[])[];
}

/** A column that knows where in a row its value is. */
export interface ColumnOf<Row> extends ExportColumn {
  readonly value: (row: Row) => ExportCell;
}

/** Fills a table's cells, row by row. */
export function exportTable<Row>(
  name: ExportTableName,
  title: string,
  columns: readonly ColumnOf<Row>[],
  rows: readonly Row[],
): ExportTable {
  return {
    name,
    title,
    columns: columns.map(({ value: _value, ...column }) => column),
    rows: rows.map((row) => columns.map(({ value }) => value(row))),
  };
}
