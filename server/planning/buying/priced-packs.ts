import { usablePrice } from '../packs/usable-price.ts';
import type { BuyPack } from '../plan-output.ts';
import type { Pack } from '../product.ts';

export interface CountedPack {
  readonly pack: Pack;
  readonly count: number;
}

/**
 * How do chosen packs read on the buy list?
 *
 * @param currency ISO 4217 code the project reckons in; a price in another one counts as unknown
 * @returns the packs with whole counts and prices in minor units, largest first
 *
 * Source: definition, line = count x price.
 * Example: 2 cans at 1899 are a line of 3798.
 */
export function pricedPacks(chosen: readonly CountedPack[], currency: string): readonly BuyPack[] {
  return [...chosen]
    .sort((left, right) => right.pack.amount - left.pack.amount)
    .map(({ pack, count }) => {
      const priceMinor = usablePrice(pack, currency);
      return {
        id: pack.id,
        label: pack.label,
        amount: pack.amount,
        count,
        priceMinor,
        lineMinor: priceMinor === null ? null : priceMinor * count,
      };
    });
}

/** The packs in words, as notes name them: "1 x gallon and 2 x quart"; none is what is on hand. Our wording, no source. */
export function packsInWords(chosen: readonly CountedPack[]): string {
  if (chosen.length === 0) return 'what is on hand';
  return chosen.map(({ pack, count }) => `${count} x ${pack.label}`).join(' and ');
}
