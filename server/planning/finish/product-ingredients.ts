import type { Problem, ProblemPlace } from '../problem.ts';
import type { Product } from '../product.ts';
import { chosenProduct } from './chosen-product.ts';
import { isPositive } from './is-positive.ts';
import type { Ingredient } from './liquid.ts';
import { twoPartSplit } from './two-part-split.ts';

/**
 * Into which products does a litre of one product fall: itself, or base and hardener?
 *
 * @param product a finish
 * @param place where the row that names it sits, for the problems
 * @param user that row in words
 * @returns each product with its share by volume; null while the mixing ratio is not usable, with a problem
 *
 * Source: `twoPartSplit`. A product is two-part when the catalogue names its hardener or the hardener's volumes.
 */
export function productIngredients(
  product: Product,
  products: ReadonlyMap<string, Product>,
  place: ProblemPlace,
  user: string,
): {
  readonly ingredients: readonly Ingredient[];
  readonly twoPart: boolean;
  readonly problems: readonly Problem[];
} {
  const { hardenerId = '', mixBase, mixHardener } = product.choices;
  const twoPart = hardenerId !== '' || isPositive(mixHardener);
  if (!twoPart) return { ingredients: [{ product, share: 1, inputs: [] }], twoPart, problems: [] };

  const found =
    hardenerId === '' ? null : chosenProduct({ products, id: hardenerId, kinds: ['finish'], place, user });
  const hardener = found?.product ?? null;
  const ratio = isPositive(mixBase) && isPositive(mixHardener) ? { mixBase, mixHardener } : null;
  const inputs = [
    { name: `volumes of ${product.name}`, value: mixBase ?? null, unit: '' as const },
    { name: `volumes of ${hardener?.name ?? 'hardener'}`, value: mixHardener ?? null, unit: '' as const },
  ];
  const split = ratio === null ? null : twoPartSplit({ litres: 1, ...ratio });
  return {
    ingredients: [
      { product, share: split?.baseL ?? null, inputs },
      ...(hardener === null ? [] : [{ product: hardener, share: split?.hardenerL ?? null, inputs }]),
    ],
    twoPart,
    problems: [
      ...(hardener !== null && ratio !== null ? [] : [hardenerMissing(product, hardener, place, user)]),
      ...(found?.problems ?? []).filter(({ code }) => code === 'product-retired'),
    ],
  };
}

function hardenerMissing(
  product: Product,
  hardener: Product | null,
  at: ProblemPlace,
  user: string,
): Problem {
  return {
    code: 'hardener-missing',
    severity: 'error',
    at,
    message:
      hardener === null
        ? `${user} uses the two-part "${product.name}", but its hardener "${product.choices.hardenerId ?? ''}" is not a finish in the catalogue.`
        : `${user} uses the two-part "${product.name}", but its mixing ratio ${product.choices.mixBase ?? '?'} : ${product.choices.mixHardener ?? '?'} is not usable.`,
    wayOut: 'Set the hardener and both volumes of the mixing ratio on the product in the catalogue.',
  };
}
