import type { BandingPlan, MaterialPlan } from '../plan-output.ts';
import type { Pack, Product } from '../product.ts';
import type { CountedPack } from './priced-packs.ts';

/** What the cutting plans of one product say must be bought: whole rolls, sheets or boards. */
export interface StockPurchase {
  readonly product: Product;
  /** Amounts in the product's unit; null when the cutting plan is not known. */
  readonly need: number | null;
  /** Of the need, what is cut from stock on hand. */
  readonly fromStock: number;
  readonly packs: readonly CountedPack[];
  /** Path of the figure the need comes from. */
  readonly from: string;
  readonly needName: string;
}

const MM_PER_M = 1000;

/**
 * Which whole rolls, sheets and boards do the cutting plans call for?
 *
 * @returns one purchase per product. Banding: need is the strips with overhang and spares, metres. Sheets and boards:
 *   need is the stocks cut up, whole ones, for what is left of them is an offcut and not an unopened pack.
 *
 * Source: definition; the counts are the cutting plans' own.
 */
export function stockPurchases(
  plan: { readonly banding: readonly BandingPlan[]; readonly materials: readonly MaterialPlan[] },
  products: ReadonlyMap<string, Product>,
): readonly StockPurchase[] {
  return [
    ...plan.materials.map((material) => materialPurchase(material, productOf(material.id, products))),
    ...plan.banding.map((banding) => bandingPurchase(banding, productOf(banding.id, products))),
  ].filter(({ need }) => need !== 0);
}

function materialPurchase({ id, stocks, layouts }: MaterialPlan, product: Product): StockPurchase {
  const counted = countPacks(layouts, product);
  const amountOf = (lengthMm: number): number => (product.unit === 'm' ? lengthMm / MM_PER_M : 1);
  const fromStock = layouts
    .filter(({ packId }) => packId === null)
    .reduce((sum, { count, lengthMm }) => sum + count * amountOf(lengthMm), 0);
  return {
    product,
    need: stocks.value === null ? null : bought(counted) + fromStock,
    fromStock,
    packs: counted,
    from: `materials/${id}/stocks`,
    needName: 'whole stocks of the cutting plan',
  };
}

function bandingPurchase({ id, neededM, rollsToBuy, rolls }: BandingPlan, product: Product): StockPurchase {
  const fromStock = rolls
    .filter(({ packId }) => packId === null)
    .flatMap(({ strips }) => strips)
    .reduce((sum, { lengthMm, count }) => sum + (lengthMm * count) / MM_PER_M, 0);
  return {
    product,
    need: rollsToBuy.value === null ? null : neededM.value,
    fromStock,
    packs: countPacks(
      rolls.map(({ packId }) => ({ packId, count: 1 })),
      product,
    ),
    from: `banding/${id}/neededM`,
    needName: 'strips with overhang and spares',
  };
}

function countPacks(
  stocks: readonly { readonly packId: string | null; readonly count: number }[],
  product: Product,
): readonly CountedPack[] {
  const counts = new Map<Pack, number>();
  for (const { packId, count } of stocks) {
    if (packId === null) continue;
    const pack = product.packs.find(({ id }) => id === packId);
    if (pack === undefined) throw new RangeError(`stockPurchases: ${product.id} has no pack ${packId}`);
    counts.set(pack, (counts.get(pack) ?? 0) + count);
  }
  return [...counts].map(([pack, count]) => ({ pack, count }));
}

function bought(packs: readonly CountedPack[]): number {
  return packs.reduce((sum, { pack, count }) => sum + pack.amount * count, 0);
}

function productOf(id: string, products: ReadonlyMap<string, Product>): Product {
  const product = products.get(id);
  if (product === undefined) throw new RangeError(`stockPurchases: product ${id} is not in the catalogue`);
  return product;
}
