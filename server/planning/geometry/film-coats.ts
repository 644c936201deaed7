import type { Product } from '../product.ts';
import type { Recipe } from '../project-input.ts';

/**
 * How many coats of a recipe leave a film on the wood?
 *
 * Seal and topcoat steps count, times their coats, unless the product is an oil, which soaks in. Result: coats. A rule
 * of ours.
 *
 * Example: one sealer and two topcoats are 3.
 */
export function filmCoats(recipe: Recipe, products: ReadonlyMap<string, Product>): number {
  let coats = 0;
  for (const step of recipe.steps)
    if (
      (step.kind === 'seal' || step.kind === 'topcoat') &&
      products.get(step.productId)?.choices.role !== 'oil'
    )
      coats += step.coats;
  return coats;
}
