import { type Figure, type FigureUnit, figure } from '../figure.ts';
import type { BandingPlan, MaterialPlan, PartPlan, PlanTotals, RecipePlan } from '../plan-output.ts';
import { COAT_STEPS } from '../project-input.ts';

/**
 * Totals for the head of the page: pieces, metres banded, area finished, litres, sheets.
 *
 * A part whose figure is unknown is left out of the sum and said so in the notes; a total is null only when every
 * summand is unknown. Units as in `PlanTotals`. No source: sums only.
 */
export function planTotals(plan: {
  readonly parts: readonly PartPlan[];
  readonly banding: readonly BandingPlan[];
  readonly materials: readonly MaterialPlan[];
  readonly recipes: readonly RecipePlan[];
}): PlanTotals {
  const rows = plan.parts;
  return {
    parts: sum('part rows', 'pcs', 'rows', [known(rows.length, 'pcs')]),
    pieces: sum(
      'pieces = sum of the quantities',
      'pcs',
      'part rows',
      rows.map((part) => part.quantity),
    ),
    bandedM: sum(
      'metres banded = sum over the parts',
      'm',
      'part rows',
      rows.map((part) => part.totalBandedM),
    ),
    finishM2: sum(
      'area finished = sum over the parts',
      'm2',
      'part rows',
      rows.map((part) => part.totalFinishM2),
    ),
    litres: sum(
      'litres of finish = sum over all coats, thinner not counted',
      'L',
      'coats',
      plan.recipes.flatMap((recipe) =>
        recipe.coats
          .filter((coat) => (COAT_STEPS as readonly string[]).includes(coat.kind))
          .map((coat) => coat.litres),
      ),
    ),
    sheets: sum(
      'sheets to buy = sum over the sheet materials',
      'pcs',
      'sheet materials',
      plan.materials.filter((material) => material.kind === 'sheet').map((material) => material.stocks),
    ),
  };
}

function known(value: number, unit: FigureUnit): Figure {
  return figure(value, unit, { rule: 'counted', inputs: [] });
}

function sum(rule: string, unit: FigureUnit, summandName: string, summands: readonly Figure[]): Figure {
  const values = summands.flatMap(({ value }) => (value === null ? [] : [value]));
  const unknown = summands.length - values.length;
  const total =
    summands.length > 0 && values.length === 0 ? null : values.reduce((left, right) => left + right, 0);
  return figure(total, unit, {
    rule,
    inputs: [{ name: summandName, value: values.length, unit: 'pcs' }],
    ...(unknown > 0
      ? { notes: [`${unknown} of ${summands.length} ${summandName} are unknown and left out of the sum.`] }
      : {}),
  });
}
