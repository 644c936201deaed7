import type { Problem } from '../problem.ts';
import type { Product, ProductKind } from '../product.ts';
import type { ExtraLine, ProjectInput } from '../project-input.ts';
import { chosenProduct } from './chosen-product.ts';
import { MAX_AMOUNT } from './constants.ts';
import type { ProductDemand } from './product-demand.ts';

const ANY_KIND = [
  'sheet',
  'board',
  'banding',
  'finish',
  'thinner',
  'abrasive',
  'glue',
  'filler',
  'hardware',
  'consumable',
] as const satisfies readonly ProductKind[];

/**
 * What do the lines the user added need of catalogue products?
 *
 * @returns one demand per usable line, in the product's unit; free lines are priced on the buy list instead
 *
 * Source: definition; the quantity is what the user entered.
 */
export function extraDemands(
  input: ProjectInput,
  products: ReadonlyMap<string, Product>,
): { readonly demands: readonly ProductDemand[]; readonly problems: readonly Problem[] } {
  const demands: ProductDemand[] = [];
  const problems: Problem[] = [];
  for (const extra of input.extras) {
    if (extra.productId === '') continue;
    const { id, productId, quantity } = extra;
    const name = extra.name === '' ? 'added by hand' : `added by hand: ${extra.name}`;
    const place = { table: 'extras', id, field: 'productId' } as const;
    const user = `The extra line "${extra.name}"`;
    const chosen = chosenProduct({ products, id: productId, kinds: ANY_KIND, place, user });
    problems.push(...chosen.problems);
    if (chosen.product === null) continue;
    const fits = quantity >= 0 && quantity <= MAX_AMOUNT;
    if (!fits) problems.push(quantityInvalid(extra));
    const need = fits ? quantity : null;
    const atCoverage = { low: need, typical: need, high: need };
    demands.push({ productId, name, need, atCoverage, from: '', notes: [] });
  }
  return { demands, problems };
}

function quantityInvalid({ id, name, quantity }: ExtraLine): Problem {
  return {
    code: 'extra-invalid',
    severity: 'error',
    at: { table: 'extras', id, field: 'quantity' },
    message: `The extra line "${name}" has a quantity of ${quantity}, which is not from 0 to ${MAX_AMOUNT}.`,
    wayOut: "Enter how much to buy, in the product's unit.",
  };
}
