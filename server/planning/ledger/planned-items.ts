import { taxOnLine } from '../buying/tax-on-line.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Catalogue } from '../product.ts';
import type { CostItem } from './cost-item.ts';
import { supplierCharges } from './supplier-charges.ts';

/**
 * What does everything on the buy list cost, bought today, with what its suppliers charge for bringing it?
 *
 * @param lines of the buy list, costs in whole minor units without tax
 * @param taxPercent percent on every line and charge; null adds none
 * @returns one item per line, tax rounded half up on each, and the charges of one order to each supplier
 *
 * Source: `taxOnLine`, `supplierCharges`.
 */
export function plannedItems(
  lines: readonly BuyLine[],
  catalogue: Catalogue,
  currency: string,
  taxPercent: number | null,
): readonly CostItem[] {
  const goodsOf = new Map<string, number>();
  for (const { supplierId, cost } of lines)
    if (supplierId !== null) goodsOf.set(supplierId, (goodsOf.get(supplierId) ?? 0) + (cost.value ?? 0));
  return [
    ...lines.map(({ id, name, category, productId, cost }): CostItem => {
      const netMinor = cost.value;
      const taxMinor =
        netMinor === null || taxPercent === null ? 0 : taxOnLine({ lineMinor: netMinor, taxPercent });
      return {
        name,
        category,
        productId,
        netMinor,
        totalMinor: netMinor === null ? null : netMinor + taxMinor,
        from: `buy/lines/${id}/cost`,
      };
    }),
    ...catalogue.suppliers.flatMap((supplier) =>
      supplierCharges(supplier, goodsOf.get(supplier.id) ?? 0, currency, taxPercent),
    ),
  ];
}
