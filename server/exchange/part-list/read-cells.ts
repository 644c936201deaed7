import Papa from 'papaparse';
import { type CellValue, readSheet } from 'read-excel-file/node';

/** A rectangle of cells as text, ragged rows padded, blank rows kept out; `lines` are the 1-based source rows. */
export interface CellTable {
  readonly rows: readonly (readonly string[])[];
  readonly lines: readonly number[];
  /** How the text was split: the delimiter, `sheet` for a workbook, or `lines` when no delimiter recurs. */
  readonly split: ',' | ';' | '\t' | '|' | 'sheet' | 'lines';
}

const DELIMITERS = ['\t', ';', '|', ','] as const;

/**
 * Splits pasted or uploaded text into cells. Of tab, semicolon, bar and comma those count that give most lines the
 * same number of cells, at least two; the one that gives the most cells is taken, and the first of equals: a comma is
 * also a decimal sign, and any of them may stand in a note. Text in which none recurs is kept as whole lines, to be
 * read one by one.
 *
 * Quoting follows RFC 4180 section 2.
 */
export function readTextCells(text: string): CellTable {
  const clean = text.replace(/^\uFEFF/, '');
  let best: { readonly table: CellTable; readonly cells: number } | null = null;
  for (const delimiter of DELIMITERS) {
    const { data } = Papa.parse<string[]>(clean, { delimiter, skipEmptyLines: false });
    const cells = usualWidth(data);
    if (cells < 2 || (best !== null && cells <= best.cells)) continue;
    const table = padded(data, delimiter);
    const wide = table.rows.filter((row) => row.filter((cell) => cell !== '').length > 1).length;
    if (wide * 2 > table.rows.length) best = { table, cells };
  }
  return (
    best?.table ??
    padded(
      clean.split(/\r\n|\r|\n/).map((line) => [line]),
      'lines',
    )
  );
}

/** Reads the first sheet of an XLSX workbook; numbers keep the digits a spreadsheet has, dates become ISO days. */
export async function readWorkbookCells(workbook: Buffer): Promise<CellTable> {
  const data = await readSheet(workbook);
  return padded(
    data.map((row) => row.map(workbookCell)),
    'sheet',
  );
}

/** Significant digits spreadsheet programs work with, as their published limits say; the rest is the floating point's. */
const SPREADSHEET_DIGITS = 15;

function workbookCell(cell: CellValue | null): string {
  if (cell === null) return '';
  if (cell instanceof Date) return cell.toISOString().slice(0, 10);
  return String(typeof cell === 'number' ? Number(cell.toPrecision(SPREADSHEET_DIGITS)) : cell);
}

function padded(rows: readonly (readonly string[])[], split: CellTable['split']): CellTable {
  const kept = rows
    .map((row, index) => ({ line: index + 1, cells: row.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const width = kept.reduce((widest, { cells }) => Math.max(widest, cells.length), 0);
  return {
    rows: kept.map(({ cells }) => [...cells, ...Array<string>(width - cells.length).fill('')]),
    lines: kept.map(({ line }) => line),
    split,
  };
}

/** The commonest number of cells of the filled rows, if two thirds of them have it; else 0. */
function usualWidth(rows: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  let filled = 0;
  for (const row of rows) {
    if (row.every((cell) => cell.trim() === '')) continue;
    filled++;
    counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  }
  const [commonest] = [...counts.entries()].sort((left, right) => right[1] - left[1]);
  return commonest !== undefined && commonest[1] * 3 >= filled * 2 ? commonest[0] : 0;
}
