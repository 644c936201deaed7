import { figure } from '../figure.ts';
import { CATEGORY_OF_KIND } from '../ledger/constants.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';

/**
 * The plan's lines, and one for each catalogue product that is ordered although nothing needs it any more.
 *
 * @param products of the catalogue by id
 * @returns the lines in their order, then those; a product that stands in for another has no line of its own
 *
 * Source: definition. Valid range: any. Departures: none.
 */
export function withOrderedOnly(
  lines: readonly BuyLine[],
  { orderLines, substitutes }: ProjectInput,
  products: ReadonlyMap<string, Product>,
): readonly BuyLine[] {
  const known = new Set([
    ...lines.map(({ productId }) => productId ?? ''),
    ...substitutes.map(({ substituteId }) => substituteId),
  ]);
  const more = [...new Set(orderLines.map(({ productId }) => productId))].flatMap((id) => {
    const product = products.get(id);
    return product === undefined || known.has(id) ? [] : [nothingOf(product)];
  });
  return [...lines, ...more];
}

/** The line of a product that nothing needs, in its unit. A definition. */
export function nothingOf(product: Product): BuyLine {
  const none = figure(0, product.unit, { rule: 'nothing in the project needs it', inputs: [] });
  const free = figure(0, 'minor', { rule: 'nothing to buy', inputs: [] });
  return {
    id: product.id,
    productId: product.id,
    name: product.name,
    category: CATEGORY_OF_KIND[product.kind],
    supplierId: null,
    supplierName: '',
    unit: product.unit,
    need: none,
    onHand: none,
    toBuy: none,
    packs: [],
    boughtAmount: none,
    leftover: none,
    cost: free,
    fewestPacks: [],
    fewestPacksCost: free,
    notes: ['Ordered, although nothing in the project needs it now.'],
  };
}
