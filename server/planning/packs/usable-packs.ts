import type { Pack } from '../product.ts';
import type { PackBasis } from './pack-choice.ts';
import { usablePrice } from './usable-price.ts';

export interface UsablePacks {
  readonly basis: Exclude<PackBasis, 'enough'>;
  /** One offer per size: the cheapest, or the first named where no price is known. */
  readonly packs: readonly Pack[];
}

/**
 * Which offers can be compared with one another?
 *
 * @param packs offers of one product
 * @param currency ISO 4217 code the project reckons in
 * @returns the ones priced in that currency; failing those, the ones without a price; failing those, the ones priced
 *   in another currency, whose price then counts as unknown
 *
 * No source: a rule of ours. Prices are never converted between currencies.
 */
export function usablePacks(packs: readonly Pack[], currency: string): UsablePacks {
  const priced = packs.filter((pack) => usablePrice(pack, currency) !== null);
  if (priced.length > 0) return { basis: 'priced', packs: onePerSize(priced) };
  const unpriced = packs.filter((pack) => pack.priceMinor === null || pack.currency === currency);
  if (unpriced.length > 0) return { basis: 'unpriced', packs: onePerSize(unpriced) };
  return packs.length > 0
    ? { basis: 'other-currency', packs: onePerSize(packs) }
    : { basis: 'none', packs: [] };
}

function onePerSize(packs: readonly Pack[]): readonly Pack[] {
  const bySize = new Map<number, Pack>();
  for (const pack of packs) {
    const rival = bySize.get(pack.amount);
    const cheaper =
      rival !== undefined &&
      pack.priceMinor !== null &&
      rival.priceMinor !== null &&
      pack.currency === rival.currency &&
      pack.priceMinor < rival.priceMinor;
    if (rival === undefined || cheaper) bySize.set(pack.amount, pack);
  }
  return [...bySize.values()].sort((left, right) => right.amount - left.amount);
}
