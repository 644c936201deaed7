import { withoutDefusing } from '../export/defuse-formula.ts';
import { type CellTable, readTextCells, readWorkbookCells } from '../part-list/read-cells.ts';
import { checkWorkbook, type SourceRefusal } from './check-workbook.ts';
import { LARGEST_TEXT_BYTES, LARGEST_WORKBOOK_BYTES, MOST_COLUMNS, MOST_ROWS } from './constants.ts';

export type Source = { readonly text: string } | { readonly workbook: Buffer };
export type SourceReading =
  | { readonly ok: true; readonly table: CellTable }
  | { readonly ok: false; readonly refusal: SourceRefusal };

/** Reads what was pasted or uploaded into cells, within limits, or says why it cannot be read. */
export async function readSource(source: Source): Promise<SourceReading> {
  const read = 'text' in source ? readText(source.text) : await readWorkbook(source.workbook);
  if (!read.ok) return read;
  const { rows } = read.table;
  if (rows.length === 0)
    return refused('The list is empty.', 'Paste the rows of a part list, or choose a file that holds one.');
  // One row more than parts: the headings.
  if (rows.length > MOST_ROWS + 1)
    return tooLarge(`The list has ${rows.length} rows; at most ${MOST_ROWS} can be imported at once.`);
  return read;
}

/** First characters of what is no list, however it was named. */
const OTHER_FORMATS: readonly (readonly [RegExp, string])[] = [
  [/^%PDF-/, 'a PDF document'],
  [/^\{\\rtf/, 'a document of a word processor'],
  [/^\s*<(!doctype html|html|table)\b/i, 'a web page'],
  [/^PK\p{Cc}/u, 'a workbook or an archive read as text'],
];
/** Share of control and replacement characters from which on something is no text. A rule of ours. */
const ODD_SHARE = 0.01;
/** A first line that only tells a spreadsheet the separator. */
const SEPARATOR_LINE = /^(\uFEFF?)sep=.\r?$/im;

function readText(text: string): SourceReading {
  const bytes = Buffer.byteLength(text);
  if (bytes > LARGEST_TEXT_BYTES)
    return tooLarge(
      `The list has ${megabytes(bytes)} MB; at most ${megabytes(LARGEST_TEXT_BYTES)} MB can be read.`,
    );
  const format = OTHER_FORMATS.find(([pattern]) => pattern.test(text))?.[1];
  if (format !== undefined || !isText(text))
    return refused(
      `This is ${format ?? 'not text'}, not a part list.`,
      'Open it in its own program, copy the rows of the list there, and paste them here.',
    );
  if (widestLine(text) > MOST_COLUMNS)
    return tooLarge(`A line has more than ${MOST_COLUMNS} columns: that is no part list.`);
  const table = readTextCells(text.replace(SEPARATOR_LINE, '$1'));
  return { ok: true, table: { ...table, rows: table.rows.map((row) => row.map(withoutDefusing)) } };
}

/** No text holds the character zero, and hardly any others that cannot be printed. */
function isText(text: string): boolean {
  const odd = text.match(/[^\P{Cc}\s]|\uFFFD/gu) ?? [];
  return !text.includes('\0') && odd.length <= text.length * ODD_SHARE;
}

/** Cells of the line that has most, whichever separator is meant; lines within quotes count as lines. */
function widestLine(text: string): number {
  let widest = 0;
  for (const line of text.split(/\r\n|\r|\n/))
    for (const separator of ['\t', ';', '|', ',']) widest = Math.max(widest, line.split(separator).length);
  return widest;
}

async function readWorkbook(workbook: Buffer): Promise<SourceReading> {
  if (workbook.length > LARGEST_WORKBOOK_BYTES)
    return tooLarge(
      `The workbook has ${megabytes(workbook.length)} MB; at most ${megabytes(LARGEST_WORKBOOK_BYTES)} MB can be read.`,
    );
  const refusal = checkWorkbook(workbook);
  if (refusal !== null) return { ok: false, refusal };
  try {
    return { ok: true, table: await readWorkbookCells(workbook) };
  } catch {
    // The reader throws errors of many kinds; each means that what is in the archive is not what belongs there.
    return refused(
      'The workbook cannot be read: what is in it does not fit together.',
      'Open it in a spreadsheet program, save it anew as XLSX, and import that; or copy the cells and paste them.',
    );
  }
}

function refused(message: string, wayOut: string): SourceReading {
  return { ok: false, refusal: { tooLarge: false, message, wayOut } };
}

function tooLarge(message: string): SourceReading {
  return {
    ok: false,
    refusal: {
      tooLarge: true,
      message,
      wayOut: 'Take out what is no part, or import the list in several pieces.',
    },
  };
}

/** Rounded up to a tenth, so that what is over a limit reads as over it. */
function megabytes(bytes: number): number {
  return Math.ceil(bytes / 100_000) / 10;
}
