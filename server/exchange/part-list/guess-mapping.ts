import { AXIS_QUESTIONS, HEADING_WORDS, type ImportField } from './heading-words.ts';
import { columnQuestions, type ImportQuestion } from './import-question.ts';
import type { CellTable } from './read-cells.ts';
import { splitHeading } from './split-heading.ts';

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
  /** What must be answered once, before the rows can be trusted. */
  readonly questions: readonly ImportQuestion[];
}

/**
 * Guesses what each column of a part list means from its heading, and asks where the heading does not say.
 * Two columns never get the same field; a heading that names a direction of the furniture (depth, height) is taken
 * for the axis that is still free, and asked about. Without a heading row every column is left to the user but the
 * ones whose cells leave no choice: a size set, or a run of text beside numbers. `headingRow` is found when not given.
 */
export function guessMapping(
  table: CellTable,
  headingRow: number | null = findHeadingRow(table),
): MappingGuess {
  const headings = headingRow === null ? [] : (table.rows[headingRow] ?? []);
  const body = table.rows.filter((_, index) => headingRow === null || index > headingRow);
  const width = table.rows[0]?.length ?? 0;
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
    if (free === undefined) continue;
    taken.add(free);
    columns[index] = { ...column, field: free };
  }
  return { headingRow, columns, questions: columnQuestions(table.split, headingRow, columns) };
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
