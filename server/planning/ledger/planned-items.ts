import { supplierCharges } from '../buying/suppliers/supplier-charges.ts';
import { termsIn } from '../buying/suppliers/terms-in.ts';
import { taxOnLine } from '../buying/tax-on-line.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Catalogue } from '../product.ts';
import { chargeItems } from './charge-items.ts';
import type { CostItem } from './cost-item.ts';

/**
 * What does everything on the buy list cost, bought today in one order to each supplier?
 *
 * @param lines of the buy list, costs in whole minor units without tax
 * @param taxPercent percent on every line and charge; null adds none
 * @returns one item per line, tax rounded half up on each, and what each supplier charges for bringing it. A charge that is not
 *   known is none.
 *
 * Source: `taxOnLine`, `supplierCharges`.
 */
export function plannedItems(
  lines: readonly BuyLine[],
  catalogue: Catalogue,
  currency: string,
  taxPercent: number | null,
): readonly CostItem[] {
  const goods = goodsBySupplier(lines, catalogue);
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
    ...catalogue.suppliers.flatMap((supplier) => {
      const goodsMinor = goods.get(supplier.id);
      if (goodsMinor === undefined) return [];
      return chargeItems(supplier.name, supplierCharges(termsIn(supplier, currency), goodsMinor), taxPercent);
    }),
  ];
}

/** What is bought from each supplier, pack by pack, minor units without tax. */
function goodsBySupplier(lines: readonly BuyLine[], catalogue: Catalogue): ReadonlyMap<string, number> {
  const products = new Map(catalogue.products.map((product) => [product.id, product]));
  const goods = new Map<string, number>();
  const add = (supplierId: string | null | undefined, minor: number): void => {
    if (supplierId != null) goods.set(supplierId, (goods.get(supplierId) ?? 0) + minor);
  };
  for (const line of lines) {
    if (line.toBuy.value === 0) continue;
    const offers = line.productId === null ? [] : (products.get(line.productId)?.packs ?? []);
    if (line.packs.length === 0) add(line.supplierId, line.cost.value ?? 0);
    for (const { id, lineMinor } of line.packs)
      add(offers.find((pack) => pack.id === id)?.supplierId, lineMinor ?? 0);
  }
  return goods;
}
