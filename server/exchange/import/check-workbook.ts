import { LARGEST_UNPACKED_BYTES, MOST_COLUMNS, MOST_ROWS } from './constants.ts';
import { openArchive } from './open-archive.ts';

/** Why a source cannot be read, and what the user can do about it. */
export interface SourceRefusal {
  readonly tooLarge: boolean;
  readonly message: string;
  readonly wayOut: string;
}

const SAVE_ANEW =
  'Open it in a spreadsheet program, save it as an XLSX workbook, and import that; or copy the cells and paste them.';
/** First bytes of a compound file: an XLS workbook, or any workbook with a password. Source: MS-CFB 2.2. */
const COMPOUND_FILE = Buffer.from('d0cf11e0a1b11ae1', 'hex');
const CELL = /<(?:\w+:)?c\b[^>]*?\br=["']([A-Z]+)(\d+)["'][^>]*?(\/?)>/g;
const ROW = /<(?:\w+:)?row\b[^>]*?\br=["'](\d+)["']/g;
/** Rows and columns of the largest sheet that the format knows. Source: ECMA-376 as used by spreadsheet programs. */
const LAST_ROW = 1_048_576;

/**
 * Is this an XLSX workbook that can be read without harm? A name or an ending proves nothing; the bytes are looked at,
 * the archive is unpacked within a limit, and no cell may lie so far out that the empty ones before it fill the memory.
 * Null when it can be read.
 */
export function checkWorkbook(workbook: Buffer): SourceRefusal | null {
  if (workbook.subarray(0, COMPOUND_FILE.length).equals(COMPOUND_FILE))
    return refusal('This is an old XLS workbook, or one with a password.', SAVE_ANEW);
  const archive = openArchive(workbook, LARGEST_UNPACKED_BYTES);
  if (!archive.ok) {
    switch (archive.fault) {
      case 'not-an-archive':
        return refusal('The file is not an XLSX workbook, whatever its name says.', SAVE_ANEW);
      case 'encrypted':
        return refusal('The workbook is locked with a password.', 'Save it without one and import that.');
      case 'too-large':
        return tooLarge('The workbook unpacks to more than a part list can hold.');
      case 'broken':
        return refusal('The workbook is damaged: a part of it is missing or changed.', SAVE_ANEW);
    }
  }
  if (!archive.entries.some(({ path }) => path === 'xl/workbook.xml'))
    return refusal('The file is an archive, but not an XLSX workbook.', SAVE_ANEW);
  const sheets = archive.entries.filter(({ path }) => /^xl\/worksheets\/[^/]+\.xml$/.test(path));
  return sheets.map(({ data }) => checkExtent(data.toString('utf8'))).find((found) => found !== null) ?? null;
}

/** Cells without a value do not count: spreadsheets like to colour the last row there is. */
function checkExtent(sheet: string): SourceRefusal | null {
  for (const [, row] of sheet.matchAll(ROW))
    if (Number(row) > LAST_ROW)
      return refusal('The workbook is damaged: it has a row that cannot be.', SAVE_ANEW);
  let lastRow = 0;
  let lastColumn = 0;
  for (const [, letters = '', row, empty] of sheet.matchAll(CELL)) {
    if (empty === '/') continue;
    lastRow = Math.max(lastRow, Number(row));
    lastColumn = Math.max(lastColumn, columnNumber(letters));
  }
  return lastColumn > MOST_COLUMNS ||
    lastRow > LAST_ROW ||
    lastRow * lastColumn > 2 * MOST_ROWS * MOST_COLUMNS
    ? tooLarge(`The sheet reaches to row ${lastRow}, column ${lastColumn}: that is no part list.`)
    : null;
}

/** A is 1, Z is 26, AA is 27. */
function columnNumber(letters: string): number {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

function refusal(message: string, wayOut: string): SourceRefusal {
  return { tooLarge: false, message, wayOut };
}

function tooLarge(message: string): SourceRefusal {
  return { tooLarge: true, message, wayOut: 'Copy the cells of the part list alone and paste them.' };
}
