import { taxOnLine } from '../buying/tax-on-line.ts';
import type { Supplier } from '../product.ts';
import type { CostItem } from './cost-item.ts';

/**
 * Which charges does a supplier put on one order of so many goods?
 *
 * @param goodsMinor goods without tax, whole minor units; an order of nothing carries no charge
 * @param currency the project's; charges in another currency are not reckoned with
 * @param taxPercent percent; null adds none
 * @returns delivery, unless the goods reach the sum that is delivered free, and the surcharge of an order below the minimum;
 *   each taxed and rounded by itself, under "other". What the supplier does not say is no charge.
 *
 * Source: definition, the supplier's terms as entered.
 * Example: goods of 40.00, delivery 9.50, free from 100.00, at 20 %: 9.50 and 1.90 tax.
 */
export function supplierCharges(
  supplier: Supplier,
  goodsMinor: number,
  currency: string,
  taxPercent: number | null,
): readonly CostItem[] {
  if (goodsMinor <= 0 || supplier.currency !== currency) return [];
  const { deliveryMinor, freeDeliveryFromMinor, minimumOrderMinor, surchargeMinor } = supplier;
  const free = freeDeliveryFromMinor !== null && goodsMinor >= freeDeliveryFromMinor;
  const small = minimumOrderMinor !== null && goodsMinor < minimumOrderMinor;
  return [
    { name: `delivery by ${supplier.name}`, netMinor: free ? null : deliveryMinor },
    { name: `surcharge of ${supplier.name} on a small order`, netMinor: small ? surchargeMinor : null },
  ].flatMap(({ name, netMinor }) => {
    if (netMinor === null || netMinor === 0) return [];
    const taxMinor = taxPercent === null ? 0 : taxOnLine({ lineMinor: netMinor, taxPercent });
    return [{ name, category: 'other', productId: null, netMinor, totalMinor: netMinor + taxMinor }];
  });
}
