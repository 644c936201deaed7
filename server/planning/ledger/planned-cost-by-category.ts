import { figure } from '../figure.ts';
import { sumFigure } from '../finish/sum-figure.ts';
import type { BuyLine, CategoryCost } from '../plan-output.ts';
import { COST_CATEGORIES } from '../project-input.ts';

/**
 * What is planned to be spent under each heading of the ledger?
 *
 * @param lines lines of the buy list; costs in whole minor units, without tax
 * @returns every heading in the ledger's order with the sum of its lines and how many of them have no known cost.
 *   A heading without lines is 0; one whose lines are all unpriced is unknown.
 *
 * Source: definition. Sums of whole numbers, so nothing is rounded here.
 * Example: two finish lines of 7800 and an unknown cost: 7800 planned, 1 line unpriced.
 */
export function plannedCostByCategory(lines: readonly BuyLine[]): readonly CategoryCost[] {
  return COST_CATEGORIES.map((id) => {
    const mine = lines.filter(({ category }) => category === id);
    return {
      id,
      planned: sumFigure({
        rule: 'planned = sum of the lines under this heading, without tax',
        unit: 'minor',
        noun: 'lines',
        summands: mine.map((line) => ({
          name: line.name,
          value: line.cost.value,
          from: `buy/lines/${line.id}/cost`,
        })),
      }),
      unpricedLines: figure(mine.filter(({ cost }) => cost.value === null).length, 'pcs', {
        rule: 'lines under this heading whose cost is not known',
        inputs: [],
      }),
    };
  });
}
