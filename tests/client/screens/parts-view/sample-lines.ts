import type { PartBook } from '../../../../client/screens/parts/part-book.ts';
import type { PartColumn } from '../../../../client/screens/parts/part-column-kinds.ts';
import { partColumns } from '../../../../client/screens/parts/part-columns.ts';
import type { PartSheetRow } from '../../../../client/screens/parts/part-sheet-row.ts';
import type { PartPlanView, PartRow, RecipeRow } from '../../../../server/http/contract.ts';
import type { Problem } from '../../../../server/planning/problem.ts';
import type { Product } from '../../../../server/planning/product.ts';
import type { ProjectSettings } from '../../../../server/planning/project-input.ts';

/** Lines of a part list in millimetres, for tests. */

export const book: PartBook = {
  settings: { units: 'metric' } as ProjectSettings,
  products: new Map([
    ['ply-18', { id: 'ply-18', shortName: 'birch 18', name: 'Birch plywood 18 mm' } as Product],
    ['ply-6', { id: 'ply-6', shortName: 'birch 6', name: 'Birch plywood 6 mm' } as Product],
  ]),
  recipes: new Map([['7', { id: '7', name: 'Clear satin' } as RecipeRow]]),
  materialChoices: [],
  edgeChoices: [],
  recipeChoices: [],
};

export const columns: ReadonlyMap<string, PartColumn> = new Map(
  partColumns(() => book).map((column) => [column.id, column]),
);

/** `lengthMm` null: the length is typed but cannot be read. */
export function lineOf(
  key: string,
  part: Partial<PartRow>,
  lengthMm: number | null = null,
  waiting: Readonly<Record<string, string>> = {},
): PartSheetRow {
  const problems = new Map<string, Problem>();
  if (lengthMm === null) problems.set('length', { severity: 'error' } as Problem);
  return {
    key,
    kind: 'part',
    number: Number(key),
    part: { id: key, length: String(lengthMm ?? '21 13/1'), ...part } as PartRow,
    plan: { id: key, lengthMm } as PartPlanView,
    totals: null,
    problems,
    waiting,
    book,
  };
}

export const keysOf = (lines: readonly PartSheetRow[]): string => lines.map(({ key }) => key).join(' ');
