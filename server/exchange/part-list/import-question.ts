import type { ColumnGuess } from './guess-mapping.ts';
import { AXIS_QUESTIONS } from './heading-words.ts';
import type { CellTable } from './read-cells.ts';
import { splitHeading } from './split-heading.ts';

/** Something about the whole list that only the user knows, asked once. */
export interface ImportQuestion {
  /** Which answer settles it. */
  readonly kind:
    | 'columns'
    | 'axis'
    | 'third-size'
    | 'size-order'
    | 'unit'
    | 'material'
    | 'banding'
    | 'finish';
  readonly text: string;
  /** Index of the column it is about; null when it is about the list. */
  readonly column: number | null;
}

/** What the meaning of the columns leaves open. */
export function columnQuestions(
  split: CellTable['split'],
  headingRow: number | null,
  columns: readonly ColumnGuess[],
): ImportQuestion[] {
  const taken = new Set(columns.map(({ field }) => field));
  const questions = columns.flatMap((column, index) => axisQuestion(column, index));
  const sized = taken.has('size') || taken.has('diameter') || (taken.has('length') && taken.has('width'));
  if (!sized && split !== 'lines')
    questions.push({
      kind: 'columns',
      text:
        headingRow === null
          ? 'The list has no headings: say what each column is.'
          : 'No column is known to hold the length and the width: choose them.',
      column: null,
    });
  if (taken.has('size') || split === 'lines')
    questions.push({
      kind: 'size-order',
      text: 'Sizes stand together: which comes first, the length or the width?',
      column: null,
    });
  return questions;
}

/** A heading such as depth or height names a direction of the furniture, not of the panel. */
function axisQuestion({ heading, field }: ColumnGuess, column: number): ImportQuestion[] {
  if (!(AXIS_QUESTIONS as readonly string[]).includes(splitHeading(heading).word)) return [];
  if (field === 'length' || field === 'width')
    return [
      {
        kind: 'axis',
        text: `“${heading}” is taken as the ${field}: is that the direction ${field === 'length' ? 'along' : 'across'} the grain?`,
        column,
      },
    ];
  if (field !== 'ignore') return [];
  return [
    {
      kind: 'third-size',
      text: `The list has “${heading}” besides a length and a width: is it a third size, or one of the two?`,
      column,
    },
  ];
}
