import { type Figure, type FigureUnit, figure } from '../figure.ts';
import type { BandingPlan, MaterialPlan, PartPlan, PlanTotals, RecipePlan } from '../plan-output.ts';
import { COAT_STEPS } from '../project-input.ts';
import { sumKnown } from './sum-known.ts';

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
    parts: sumKnown('part rows', 'pcs', 'rows', [known(rows.length, 'pcs')]),
    pieces: sumKnown(
      'pieces = sum of the quantities',
      'pcs',
      'part rows',
      rows.map((part) => part.quantity),
    ),
    bandedM: sumKnown(
      'metres banded = sum over the parts',
      'm',
      'part rows',
      rows.map((part) => part.totalBandedM),
    ),
    finishM2: sumKnown(
      'area finished = sum over the parts',
      'm2',
      'part rows',
      rows.map((part) => part.totalFinishM2),
    ),
    litres: sumKnown(
      'litres of finish = sum over all coats, thinner not counted',
      'L',
      'coats',
      plan.recipes.flatMap((recipe) =>
        recipe.coats
          .filter((coat) => (COAT_STEPS as readonly string[]).includes(coat.kind))
          .map((coat) => coat.litres),
      ),
    ),
    sheets: sumKnown(
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
