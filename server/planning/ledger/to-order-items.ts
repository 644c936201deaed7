import type { BuyingPlan } from '../buying/buying-plan.ts';
import { taxOnLine } from '../buying/tax-on-line.ts';
import type { CostItem } from './cost-item.ts';

/**
 * What does everything cost that is still to be ordered?
 *
 * @param buying its lines, and what each supplier charges for the order
 * @param taxPercent percent on charges; null adds none. Lines bear the tax reckoned for them.
 * @returns one item per line with something to order, and one per delivery charge and surcharge, under "other"
 *
 * Source: definition, the buying plan's own figures.
 */
export function toOrderItems(
  { lines, baskets }: Pick<BuyingPlan, 'lines' | 'baskets'>,
  taxPercent: number | null,
): readonly CostItem[] {
  return [
    ...lines.map(
      ({ name, category, productId, cost, tax }): CostItem => ({
        name,
        category,
        productId,
        netMinor: cost.value,
        totalMinor: cost.value === null ? null : cost.value + (tax.value ?? 0),
      }),
    ),
    ...baskets.flatMap(({ name, delivery, surcharge }) =>
      [
        { name: `delivery by ${name}`, netMinor: delivery.value ?? 0 },
        { name: `surcharge of ${name} on a small order`, netMinor: surcharge.value ?? 0 },
      ]
        .filter(({ netMinor }) => netMinor > 0)
        .map(({ name: charge, netMinor }): CostItem => {
          const taxMinor = taxPercent === null ? 0 : taxOnLine({ lineMinor: netMinor, taxPercent });
          return {
            name: charge,
            category: 'other',
            productId: null,
            netMinor,
            totalMinor: netMinor + taxMinor,
          };
        }),
    ),
  ];
}
