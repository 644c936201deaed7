import type { Product } from '../../planning/product.ts';
import { EDGE_NAMES, type Recipe, type UnitSystem } from '../../planning/project-input.ts';
import { type ColumnGuess, guessMapping, type ImportUnit } from '../part-list/guess-mapping.ts';
import type { ImportField } from '../part-list/heading-words.ts';
import { columnQuestions, type ImportQuestion } from '../part-list/import-question.ts';
import {
  type CellState,
  type ImportChoices,
  type PreviewCell,
  type PreviewRow,
  previewPartList,
} from '../part-list/preview-part-list.ts';
import type { CellTable } from '../part-list/read-cells.ts';
import { SAMPLE_ROWS } from './constants.ts';

/** What a column of the list is, as the user says it. */
export interface ColumnAnswer {
  readonly field: ImportField;
  readonly unit: ImportUnit;
  readonly decimalComma: boolean;
}

/** What the user has said so far; what is left out is guessed or takes its ordinary value. */
export interface ImportAnswers {
  readonly headingRow?: number | null;
  readonly columns?: readonly ColumnAnswer[];
  readonly sizeOrder?: ImportChoices['sizeOrder'];
  readonly bareUnit?: ImportUnit;
  readonly materialId?: string;
  readonly bandingId?: string;
  readonly recipeId?: string;
}

export interface ImportPreview {
  readonly split: CellTable['split'];
  readonly headingRow: number | null;
  readonly columns: readonly ColumnGuess[];
  readonly questions: readonly ImportQuestion[];
  /** The first rows of the source as they stand, with their 1-based lines. */
  readonly sample: readonly { readonly line: number; readonly cells: readonly string[] }[];
  readonly rows: readonly PreviewRow[];
  /** Cells by state, and rows by their worst cell. */
  readonly counts: Readonly<Record<'cells' | 'rows', Readonly<Record<CellState, number>>>>;
}

/** What the list is read with. */
export interface ImportProject {
  readonly units: UnitSystem;
  readonly products: readonly Product[];
  readonly recipes: readonly Pick<Recipe, 'id' | 'name'>[];
}

/** Answers that do not fit the list they are about. */
export class AnswerMismatch extends Error {}

/**
 * What would importing this list write, and what must be asked first? Columns whose headings say nothing are left out
 * until the user says what they are. Throws AnswerMismatch for answers about another list than this.
 */
export function previewImport(
  table: CellTable,
  answers: ImportAnswers,
  { units, products, recipes }: ImportProject,
): ImportPreview {
  const guess = guessMapping(table, checkedHeadingRow(table, answers.headingRow));
  const columns = answers.columns === undefined ? guess.columns : answered(guess.columns, answers.columns);
  const { headingRow } = guess;
  const choices: ImportChoices = {
    units,
    headingRow,
    columns,
    sizeOrder: answers.sizeOrder ?? 'length-width',
    bareUnit: answers.bareUnit ?? null,
    materialId: answers.materialId ?? '',
    bandingId: answers.bandingId ?? '',
    recipeId: answers.recipeId ?? '',
    products,
    recipes,
  };
  const rows = previewPartList(table, choices);
  return {
    split: table.split,
    headingRow,
    columns,
    questions: [
      ...columnQuestions(table.split, headingRow, columns),
      ...unitQuestion(table, choices),
      ...productQuestions(rows, choices),
    ],
    sample: table.rows
      .slice(0, SAMPLE_ROWS)
      .map((cells, index) => ({ line: table.lines[index] ?? index + 1, cells })),
    rows,
    counts: countStates(rows),
  };
}

function checkedHeadingRow(table: CellTable, row: number | null | undefined): number | null | undefined {
  if (row !== null && row !== undefined && row >= table.rows.length)
    throw new AnswerMismatch(
      `The list has ${table.rows.length} rows, so row ${row + 1} cannot hold the headings.`,
    );
  return row;
}

function answered(guessed: readonly ColumnGuess[], answers: readonly ColumnAnswer[]): readonly ColumnGuess[] {
  if (answers.length !== guessed.length)
    throw new AnswerMismatch(`The list has ${guessed.length} columns, but ${answers.length} are described.`);
  const fields = answers.map(({ field }) => field).filter((field) => field !== 'ignore');
  const twice = fields.find((field, index) => fields.indexOf(field) < index);
  if (twice !== undefined) throw new AnswerMismatch(`Two columns are both said to be the ${twice}.`);
  return guessed.map((column, index) => ({ ...column, ...answers[index] }));
}

const SIZE_FIELDS = ['length', 'width', 'size', 'diameter'];
const HAS_A_NUMBER = /\d/;
/** A size that says its unit: a letter unit or a mark for feet or inches. */
const SAYS_ITS_UNIT = /\d\s*(?:mm|cm|m\b|in\b|inch|ft\b|feet|["”″'’′])/i;

/** Asked when some size stands without a unit in a column whose heading names none. */
function unitQuestion(table: CellTable, { columns, headingRow, units }: ImportChoices): ImportQuestion[] {
  const open = columns.flatMap(({ field, unit }, index) =>
    unit === null && (SIZE_FIELDS.includes(field) || table.split === 'lines') ? [index] : [],
  );
  const body = table.rows.slice(headingRow === null ? 0 : headingRow + 1);
  const bare = body.some((row) =>
    open.some((index) => HAS_A_NUMBER.test(row[index] ?? '') && !SAYS_ITS_UNIT.test(row[index] ?? '')),
  );
  if (!bare) return [];
  const unit = units === 'metric' ? 'millimetres' : 'inches';
  return [
    {
      kind: 'unit',
      text: `Some sizes are plain numbers: are they in ${unit}, the project's unit, or in another?`,
      column: null,
    },
  ];
}

function productQuestions(rows: readonly PreviewRow[], choices: ImportChoices): ImportQuestion[] {
  const unmatched = rows.filter(
    ({ material }) => material.state !== 'read' || material.text === choices.materialId,
  );
  const ticked = rows.filter(({ edges }) =>
    EDGE_NAMES.some((edge) =>
      choices.bandingId === '' ? edges[edge].state === 'doubt' : edges[edge].text === choices.bandingId,
    ),
  );
  const questions: ImportQuestion[] = [];
  if (unmatched.length > 0)
    questions.push({
      kind: 'material',
      text: `${rowWords(unmatched.length)} no material that the catalogue knows: which is it?`,
      column: null,
    });
  if (ticked.length > 0)
    questions.push({
      kind: 'banding',
      text: `${rowWords(ticked.length)} banded edges, but no banding that the catalogue knows: which is it?`,
      column: null,
    });
  const raw = rows.filter((row) =>
    [row.showFace, row.backFace].some(
      ({ text, state }) => state !== 'read' || (text !== '' && text === choices.recipeId),
    ),
  );
  if (raw.length > 0 && choices.recipes.length > 0)
    questions.push({
      kind: 'finish',
      text: `${rowWords(raw.length)} a face without a finish of this project: which does it get?`,
      column: null,
    });
  return questions;
}

function rowWords(count: number): string {
  return count === 1 ? '1 row has' : `${count} rows have`;
}

const WORST_FIRST = ['refused', 'doubt', 'read', 'empty'] as const satisfies readonly CellState[];

function countStates(rows: readonly PreviewRow[]): ImportPreview['counts'] {
  const counts = {
    cells: { read: 0, doubt: 0, refused: 0, empty: 0 },
    rows: { read: 0, doubt: 0, refused: 0, empty: 0 },
  };
  for (const row of rows) {
    const states = cellsOf(row).map(({ state }) => state);
    for (const state of states) counts.cells[state]++;
    counts.rows[WORST_FIRST.find((state) => states.includes(state)) ?? 'empty']++;
  }
  return counts;
}

function cellsOf({ line: _line, edges, corners, ...cells }: PreviewRow): readonly PreviewCell[] {
  return [...Object.values(cells), ...Object.values(edges), ...Object.values(corners)];
}
