import type { Problem, ProblemPlace } from '../problem.ts';
import type { Product, ProductKind } from '../product.ts';

export interface ChosenProduct {
  /** Null when the choice cannot be used. */
  readonly product: Product | null;
  readonly problems: readonly Problem[];
}

/**
 * Can the product a row names be used there?
 *
 * @param id product id as stored in the row
 * @param kinds kinds that make sense in that place
 * @param place where the row sits, for the problem
 * @param user what wants the product, in words that fit before "needs": `Step 2 (stain) of "Clear satin"`
 * @returns the product, or null with the reason; a retired product is used and said so
 *
 * No source: a rule of ours.
 */
export function chosenProduct({
  products,
  id,
  kinds,
  place,
  user,
}: {
  readonly products: ReadonlyMap<string, Product>;
  readonly id: string;
  readonly kinds: readonly ProductKind[];
  readonly place: ProblemPlace;
  readonly user: string;
}): ChosenProduct {
  const product = products.get(id);
  if (product === undefined)
    return {
      product: null,
      problems: [
        {
          code: 'product-unknown',
          severity: 'error',
          at: place,
          message:
            id === ''
              ? `${user} has no product chosen.`
              : `${user} names the product "${id}", which is not in the catalogue.`,
          wayOut: 'Choose a product from the catalogue, or add this one to it.',
        },
      ],
    };
  if (!kinds.includes(product.kind))
    return {
      product: null,
      problems: [
        {
          code: 'product-wrong-kind',
          severity: 'error',
          at: place,
          message: `${user} needs a product of kind ${kinds.join(' or ')}, but "${product.name}" is of kind ${product.kind}.`,
          wayOut: `Choose a product of kind ${kinds.join(' or ')} here.`,
        },
      ],
    };
  if (!product.retired) return { product, problems: [] };
  return {
    product,
    problems: [
      {
        code: 'product-retired',
        severity: 'warning',
        at: place,
        message: `${user} uses "${product.name}", which has been retired from the catalogue.`,
        wayOut: 'Choose a product that is still offered, or restore this one in the catalogue.',
      },
    ],
  };
}
