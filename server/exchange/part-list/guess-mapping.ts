import { AXIS_QUESTIONS, HEADING_WORDS, type ImportField } from './heading-words.ts';
import type { CellTable } from './read-cells.ts';

export type ImportUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft' | null;

export interface ColumnGuess {
  readonly heading: string;
  readonly field: ImportField;
  /** Unit named in the heading; null when none is. */
  readonly unit: ImportUnit;
  /** True when the column's numbers use a comma as their decimal sign and none uses a point. */
  readonly decimalComma: boolean;
}

export interface MappingGuess {
  /** Index of the heading row in the table; null when the list has none. */
  readonly headingRow: number | null;
  readonly columns: readonly ColumnGuess[];
  /** What must be answered once, before the rows can be trusted. Plain sentences. */
  readonly questions: readonly string[];
}

/**
 * Guesses what each column of a part list means from its heading, and asks where the heading does not say.
 * Two columns never get the same field; a heading that names a direction of the furniture (depth, height) is taken
 * for the axis that is still free, and asked about. Without a heading row every column is left to the user but the
 * ones whose cells leave no choice: a size set, or a run of text beside numbers.
 */
export function guessMapping(table: CellTable): MappingGuess {
  const headingRow = findHeadingRow(table);
  const headings = headingRow === null ? [] : (table.rows[headingRow] ?? []);
  const body = table.rows.filter((_, index) => headingRow === null || index > headingRow);
  const width = table.rows[0]?.length ?? 0;
  const questions: string[] = [];
  const taken = new Set<ImportField>();
  const columns: ColumnGuess[] = [];

  for (let column = 0; column < width; column++) {
    const heading = headings[column] ?? '';
    const { word, unit } = splitHeading(heading);
    const cells = body.map((row) => row[column] ?? '');
    const found = headingRow === null ? fieldOfCells(cells) : fieldOfHeading(word);
    const field = found !== 'ignore' && taken.has(found) ? 'ignore' : found;
    if (field !== 'ignore') taken.add(field);
    columns.push({ heading, field, unit, decimalComma: usesDecimalComma(cells) });
  }

  for (const [index, column] of columns.entries()) {
    const { word } = splitHeading(column.heading);
    if (!(AXIS_QUESTIONS as readonly string[]).includes(word)) continue;
    const free = (['length', 'width'] as const).find((axis) => !taken.has(axis));
    if (free === undefined) {
      questions.push(
        `The list has "${column.heading}" besides a length and a width: is it a third size, or one of the two?`,
      );
      continue;
    }
    taken.add(free);
    columns[index] = { ...column, field: free };
    questions.push(
      `"${column.heading}" is taken as the ${free}: is that the direction ${free === 'length' ? 'along' : 'across'} the grain?`,
    );
  }
  if (headingRow === null && width > 1) questions.push('The list has no headings: say what each column is.');
  if (!taken.has('size') && !(taken.has('length') && taken.has('width')) && width > 1) {
    questions.push('No column is known to hold the length and the width: choose them.');
  }
  if (taken.has('size'))
    questions.push('Sizes stand together in one column: which comes first, the length or the width?');
  return { headingRow, columns, questions };
}

/** The first of the first ten rows in which at least two cells, and half of the filled ones, are known headings. */
function findHeadingRow(table: CellTable): number | null {
  for (const [index, row] of table.rows.slice(0, 10).entries()) {
    const filled = row.filter((cell) => cell !== '');
    const known = filled.filter((cell) => {
      const { word } = splitHeading(cell);
      return fieldOfHeading(word) !== 'ignore' || (AXIS_QUESTIONS as readonly string[]).includes(word);
    });
    if (known.length >= 2 && known.length * 2 >= filled.length) return index;
  }
  return null;
}

function fieldOfHeading(word: string): ImportField {
  for (const [field, words] of Object.entries(HEADING_WORDS))
    if (words.includes(word)) return field as ImportField;
  return 'ignore';
}

const UNIT_WORDS: Readonly<Record<string, Exclude<ImportUnit, null>>> = {
  mm: 'mm',
  millimetres: 'mm',
  millimeters: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  '”': 'in',
  ft: 'ft',
  feet: 'ft',
};

/** "Length (mm)" -> word "length", unit mm; "W, in." -> "w", in; "No." -> "no". */
export function splitHeading(heading: string): { readonly word: string; readonly unit: ImportUnit } {
  const lower = heading
    .toLowerCase()
    .replaceAll('×', 'x')
    .replace(/[.:#*]/g, ' ')
    .trim();
  const bracketed =
    /^(.*?)[([{]\s*([^)\]}]+?)\s*[)\]}]\s*$/.exec(lower) ??
    /^(.*?)(?:,|\bin\b(?=\s+(?:mm|cm|m|inch|inches|ft|feet)$)|\/|\s-)\s*(\S+)$/.exec(lower);
  const unit = bracketed === null ? undefined : UNIT_WORDS[(bracketed[2] ?? '').trim()];
  const word = unit === undefined ? lower : (bracketed?.[1] ?? '');
  return {
    word: word
      .replace(/[_\s]+/g, ' ')
      .replace(/[\s,(/-]+$/, '')
      .trim(),
    unit: unit ?? null,
  };
}

function fieldOfCells(cells: readonly string[]): ImportField {
  const filled = cells.filter((cell) => cell !== '');
  if (filled.length === 0) return 'ignore';
  if (filled.every((cell) => /\d\s*["”″'’′]?\s*(?:mm|cm|m|in|ft)?\s*[x×*]\s*\d/i.test(cell))) return 'size';
  if (filled.every((cell) => !/^[\d\s.,/"'”’-]+$/.test(cell) && /\p{L}{3}/u.test(cell))) return 'name';
  return 'ignore';
}

function usesDecimalComma(cells: readonly string[]): boolean {
  const comma = cells.some((cell) => /\d,\d{1,2}(?!\d)/.test(cell));
  return comma && !cells.some((cell) => /\d\.\d/.test(cell));
}
