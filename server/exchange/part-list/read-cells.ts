import Papa from 'papaparse';
import readXlsxFile from 'read-excel-file/node';

/** A rectangle of cells as text, ragged rows padded, blank rows kept out; `lines` are the 1-based source rows. */
export interface CellTable {
  readonly rows: readonly (readonly string[])[];
  readonly lines: readonly number[];
  /** How the text was split: the delimiter, `sheet` for a workbook, or `lines` when no delimiter recurs. */
  readonly split: ',' | ';' | '\t' | '|' | 'sheet' | 'lines';
}

const DELIMITERS = ['\t', ';', '|', ','] as const;

/**
 * Splits pasted or uploaded text into cells. The delimiter is the first of tab, semicolon, bar and comma that gives
 * at least two columns on most lines; a comma is taken last, because it is also a decimal sign. Text in which none
 * recurs is kept as whole lines, to be read one by one.
 *
 * Quoting follows RFC 4180 section 2.
 */
export function readTextCells(text: string): CellTable {
  const clean = text.replace(/^\uFEFF/, '');
  for (const delimiter of DELIMITERS) {
    const parsed = Papa.parse<string[]>(clean, { delimiter, skipEmptyLines: false });
    const table = padded(parsed.data, delimiter);
    const wide = table.rows.filter((row) => row.filter((cell) => cell !== '').length > 1).length;
    if (table.rows.length > 0 && wide * 2 > table.rows.length && evenWidth(parsed.data)) return table;
  }
  return padded(
    clean.split(/\r\n|\r|\n/).map((line) => [line]),
    'lines',
  );
}

/** Reads the first sheet of an XLSX workbook; numbers keep their full digits, dates become ISO days. */
export async function readWorkbookCells(workbook: Buffer): Promise<CellTable> {
  const sheets = await readXlsxFile(workbook);
  const data = sheets[0]?.data ?? [];
  return padded(
    data.map((row) =>
      row.map((cell) =>
        cell === null ? '' : cell instanceof Date ? cell.toISOString().slice(0, 10) : String(cell),
      ),
    ),
    'sheet',
  );
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

/** True when most filled rows have the commonest number of cells: a decimal comma here and there does not. */
function evenWidth(rows: readonly (readonly string[])[]): boolean {
  const counts = new Map<number, number>();
  let filled = 0;
  for (const row of rows) {
    if (row.every((cell) => cell.trim() === '')) continue;
    filled++;
    counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  }
  const [commonest] = [...counts.entries()].sort((left, right) => right[1] - left[1]);
  return commonest !== undefined && commonest[0] > 1 && commonest[1] * 3 >= filled * 2;
}
