import type { BuyingPlan } from '../buying/buying-plan.ts';
import { chargeItems } from './charge-items.ts';
import type { CostItem } from './cost-item.ts';

/**
 * What does everything cost that is still to be ordered?
 *
 * @param buying its lines, and what each supplier charges for the order
 * @param taxPercent percent on charges; null adds none. Lines bear the tax reckoned for them.
 * @returns one item per line with something to order, and one per delivery charge and surcharge, under "other"; together
 *   what the baskets come to
 *
 * Source: definition, the buying plan's own figures.
 */
export function toOrderItems(
  { lines, baskets }: Pick<BuyingPlan, 'lines' | 'baskets'>,
  taxPercent: number | null,
): readonly CostItem[] {
  return [
    ...lines
      .filter(({ toOrder }) => toOrder.value !== 0)
      .map(
        ({ name, category, productId, cost, tax }): CostItem => ({
          name,
          category,
          productId,
          netMinor: cost.value,
          totalMinor: cost.value === null ? null : cost.value + (tax.value ?? 0),
        }),
      ),
    ...baskets.flatMap(({ name, delivery, surcharge }) =>
      chargeItems(
        name,
        { deliveryMinor: delivery.value ?? 0, surchargeMinor: surcharge.value ?? 0 },
        taxPercent,
      ),
    ),
  ];
}
