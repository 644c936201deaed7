import { LEAST_FIGURE, MAX_AMOUNT } from '../finish/constants.ts';
import type { PackBasis } from '../packs/pack-choice.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';

/**
 * What is there to say when packs could not be ranked by price?
 *
 * @returns one problem, located at the product's packs; none for `priced` and `enough`
 *
 * No source: a wording of ours. A price that is not known is a warning: the packs stand, the total is "at least".
 */
export function packBasisProblems(product: Product, basis: PackBasis, currency: string): readonly Problem[] {
  const at = { table: 'products', id: product.id, field: 'packs' } as const;
  if (basis === 'none')
    return [
      {
        code: 'pack-missing',
        severity: 'error',
        at,
        message: `"${product.name}" has no pack to buy it in, so its cost is unknown.`,
        wayOut: 'Add the packs it is sold in, with their prices, in the catalogue.',
      },
    ];
  if (basis === 'unpriced')
    return [
      {
        code: 'price-missing',
        severity: 'warning',
        at,
        message: `"${product.name}" has no price, so the total is without it.`,
        wayOut: `Enter the price of its packs in ${currency} in the catalogue.`,
      },
    ];
  if (basis === 'other-currency')
    return [
      {
        code: 'price-currency-missing',
        severity: 'warning',
        at,
        message: `"${product.name}" has no price in ${currency}, only in another currency, so the total is without it.`,
        wayOut: `Enter the price of its packs in ${currency} in the catalogue.`,
      },
    ];
  return [];
}

/**
 * Which packs of a product cannot be used because of their size?
 *
 * @returns the packs left, and one problem naming the ones left out
 *
 * No source: a rule of ours; a pack holds from a millionth to a million of the product's unit.
 */
export function soundPacks(product: Product): {
  readonly packs: Product['packs'];
  readonly problems: readonly Problem[];
} {
  const sound = product.packs.filter(({ amount }) => amount >= LEAST_FIGURE && amount <= MAX_AMOUNT);
  const bad = product.packs.filter((pack) => !sound.includes(pack));
  if (bad.length === 0) return { packs: sound, problems: [] };
  return {
    packs: sound,
    problems: [
      {
        code: 'pack-size-invalid',
        severity: 'warning',
        at: { table: 'products', id: product.id, field: 'packs' },
        message: `"${product.name}" has packs without a usable amount (${bad.map(({ label, amount }) => `${label}: ${amount}`).join(', ')}), which are left out.`,
        wayOut: `Enter how much is in each pack, in ${product.unit}.`,
      },
    ],
  };
}
