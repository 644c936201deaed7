import { COVER_TOLERANCE } from '../../packs/constants.ts';
import { leastCostPacks } from '../../packs/least-cost-packs.ts';
import { usablePrice } from '../../packs/usable-price.ts';
import type { Catalogue, Pack, Product } from '../../product.ts';
import { groupedBy } from '../grouped-by.ts';
import { soundPacks } from '../line-problems.ts';
import type { CountedPack } from '../priced-packs.ts';

/** How one supplier would fill one line. */
export interface LineOffer {
  /** Empty where no supplier is named. */
  readonly supplierId: string;
  readonly product: Product;
  readonly packs: readonly CountedPack[];
  /** Whole minor units without tax; null when a price is not known in the project's currency. */
  readonly costMinor: number | null;
  /** No mix of this supplier's packs costs less. */
  readonly proven: boolean;
}

/** What is to be filled: an amount that can be poured or counted together, or pieces that must be whole. */
export type Wanted =
  | { readonly kind: 'amount'; readonly amount: number }
  | { readonly kind: 'pieces'; readonly packs: readonly CountedPack[] };

/**
 * Which suppliers can fill a line, with which packs, and at what cost?
 *
 * @param products the product wanted, then the ones the user allows in its place, amount for amount
 * @param wanted in the product's unit; or whole packs as the cutting plan has them, each filled by an equal or larger one
 * @param currency ISO 4217 code the project reckons in
 * @returns one offer per supplier that is not retired: the cheapest of its products, of equal ones the first. Offers without a
 *   known price follow those with one. Pieces that no one supplier has are one offer without a supplier.
 *
 * Source: `leastCostPacks` for amounts; a definition for pieces. Valid range: any. Departures: a substitute of another unit is
 * no substitute.
 * Example: 1.5 L wanted, quarts at A, litres at B: two quarts from A, two litres from B.
 */
export function lineOffers({
  products,
  wanted,
  catalogue,
  currency,
}: {
  readonly products: readonly Product[];
  readonly wanted: Wanted;
  readonly catalogue: Catalogue;
  readonly currency: string;
}): readonly LineOffer[] {
  const retired = new Set(catalogue.suppliers.filter((one) => one.retired).map(({ id }) => id));
  const bySupplier = new Map<string, LineOffer>();
  for (const product of products) {
    if (product.unit !== products[0]?.unit) continue;
    const { packs } = soundPacks(product);
    const groups = groupedBy(packs, ({ supplierId }) => supplierId ?? '');
    for (const [supplierId, own] of groups) {
      if (retired.has(supplierId)) continue;
      const offer = offerOf(product, own, supplierId);
      const rival = bySupplier.get(supplierId);
      if (offer !== null && (rival === undefined || isCheaper(offer, rival)))
        bySupplier.set(supplierId, offer);
    }
  }
  const [first] = products;
  if (bySupplier.size === 0 && first !== undefined && wanted.kind === 'pieces') {
    const all = soundPacks(first).packs.filter(({ supplierId }) => !retired.has(supplierId ?? ''));
    const mixed = offerOf(first, all, '');
    if (mixed !== null) return [mixed];
  }
  return [...bySupplier.values()].sort(
    (one, other) => Number(one.costMinor === null) - Number(other.costMinor === null),
  );

  function offerOf(product: Product, own: readonly Pack[], supplierId: string): LineOffer | null {
    if (wanted.kind === 'amount') {
      const choice = leastCostPacks({ need: wanted.amount, onHand: 0, packs: own, currency });
      if (choice.basis === 'none') return null;
      return { supplierId, product, packs: choice.packs, costMinor: choice.costMinor, proven: choice.proven };
    }
    const packs = equalOrLarger(wanted.packs, own, currency);
    if (packs === null) return null;
    const prices = packs.map(({ pack, count }) => {
      const price = usablePrice(pack, currency);
      return price === null ? null : price * count;
    });
    const costMinor = prices.includes(null)
      ? null
      : prices.reduce<number>((sum, price) => sum + (price ?? 0), 0);
    return { supplierId, product, packs, costMinor, proven: true };
  }
}

function isCheaper(offer: LineOffer, rival: LineOffer): boolean {
  if (rival.costMinor === null) return offer.costMinor !== null;
  return offer.costMinor !== null && offer.costMinor < rival.costMinor;
}

/** Each wanted pack from what one supplier has: the cheapest that is at least as large. Null when one cannot be had. */
function equalOrLarger(
  wanted: readonly CountedPack[],
  own: readonly Pack[],
  currency: string,
): readonly CountedPack[] | null {
  const counts = new Map<Pack, number>();
  for (const { pack, count } of wanted) {
    const price = (one: Pack): number => usablePrice(one, currency) ?? Number.POSITIVE_INFINITY;
    const [best] = own
      .filter((one) => coversPack(one, pack))
      .sort(
        (one, other) =>
          (price(one) === price(other) ? 0 : price(one) - price(other)) ||
          one.amount - other.amount ||
          sizeOf(one) - sizeOf(other),
      );
    if (best === undefined) return null;
    counts.set(best, (counts.get(best) ?? 0) + count);
  }
  return [...counts].map(([pack, count]) => ({ pack, count }));
}

/** Can everything that is cut from one pack be cut from another? Lengths and widths in mm; a definition. */
export function coversPack(larger: Pack, pack: Pack): boolean {
  if (larger.id === pack.id && larger.supplierId === pack.supplierId) return true;
  if (larger.amount < pack.amount - COVER_TOLERANCE) return false;
  const fits = (one: number | null, other: number | null): boolean =>
    other === null || (one !== null && one >= other);
  return fits(larger.lengthMm, pack.lengthMm) && fits(larger.widthMm, pack.widthMm);
}

function sizeOf({ lengthMm, widthMm }: Pack): number {
  return (lengthMm ?? 0) * (widthMm ?? 0);
}
