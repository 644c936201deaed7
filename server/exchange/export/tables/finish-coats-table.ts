import type { CoatPlan, Plan, RecipePlan } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { KIND_WORDS, METHOD_WORDS } from './step-words.ts';

interface Row {
  readonly recipe: RecipePlan;
  readonly number: number;
  readonly coat: CoatPlan;
  /** Null for a pass that lays no liquid, or one that is a single product. */
  readonly share: CoatPlan['shares'][number] | null;
}

/**
 * Every coat and every pass of dry work, in order. A coat mixed from several products has one line per product below
 * its own, with that product's volume alone, so that the coats' own column still adds up.
 */
export function finishCoatsTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, area, volume } = columnMakers(input.settings);
  return exportTable<Row>(
    'finish-coats',
    'Finish coats',
    [
      text('Finish', 24, ({ recipe }) => recipe.name),
      count('Step', ({ number }) => number),
      text('Work', 12, ({ coat, share }) => (share === null ? KIND_WORDS[coat.kind] : '')),
      text('With', 34, ({ coat, share }) => share?.name ?? coat.name),
      text('Method', 15, ({ coat, share }) =>
        share !== null || coat.method === null ? null : METHOD_WORDS[coat.method],
      ),
      area('Area', ({ recipe, share }) => (share === null ? recipe.areaM2.value : null)),
      volume(
        'Liquid',
        coatOnly(({ litres }) => litres.value),
      ),
      volume('Of which', ({ share }) => share?.litres.value),
      volume(
        'Liquid at low coverage',
        coatOnly(({ litresAtLowCoverage }) => litresAtLowCoverage.value),
      ),
      volume(
        'Liquid at typical coverage',
        coatOnly(({ litresAtTypicalCoverage }) => litresAtTypicalCoverage.value),
      ),
      volume(
        'Liquid at high coverage',
        coatOnly(({ litresAtHighCoverage }) => litresAtHighCoverage.value),
      ),
      volume(
        'Thinner',
        coatOnly(({ thinnerLitres }) => thinnerLitres.value),
      ),
      count(
        'Mixes',
        coatOnly(({ mixes }) => mixes.value),
      ),
      count(
        'Abrasives (pcs)',
        coatOnly(({ pieces }) => pieces.value),
      ),
    ],
    plan.recipes.flatMap((recipe) => recipe.coats.flatMap((coat, index) => rowsOf(recipe, coat, index + 1))),
  );
}

function rowsOf(recipe: RecipePlan, coat: CoatPlan, number: number): Row[] {
  const row = { recipe, number, coat, share: null };
  return coat.shares.length < 2 ? [row] : [row, ...coat.shares.map((share) => ({ ...row, share }))];
}

function coatOnly(value: (coat: CoatPlan) => number | null): (row: Row) => number | null {
  return ({ coat, share }) => (share === null ? value(coat) : null);
}
