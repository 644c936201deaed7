import { taxOnLine } from '../buying/tax-on-line.ts';
import type { CostItem } from './cost-item.ts';

/**
 * What do a supplier's charges on one order come to?
 *
 * @param charges whole minor units without tax; those of 0 are none
 * @param taxPercent percent; null adds none
 * @returns delivery and surcharge, each taxed and rounded by itself, under "other"
 *
 * Source: `taxOnLine`. Example: delivery of 9.50 at 20 %: 11.40.
 */
export function chargeItems(
  supplierName: string,
  charges: { readonly deliveryMinor: number; readonly surchargeMinor: number },
  taxPercent: number | null,
): readonly CostItem[] {
  return [
    { name: `delivery by ${supplierName}`, netMinor: charges.deliveryMinor },
    { name: `surcharge of ${supplierName} on a small order`, netMinor: charges.surchargeMinor },
  ]
    .filter(({ netMinor }) => netMinor > 0)
    .map(({ name, netMinor }) => {
      const taxMinor = taxPercent === null ? 0 : taxOnLine({ lineMinor: netMinor, taxPercent });
      return { name, category: 'other', productId: null, netMinor, totalMinor: netMinor + taxMinor };
    });
}
