import type { Product } from '../../product.ts';
import type { ProjectInput, RecipeStep } from '../../project-input.ts';

/**
 * Which products does a step of a recipe use?
 *
 * @param step one step of a recipe
 * @param input the project, for its blends and catalogue
 * @returns `laid`: the liquid, or the components of its blend; `all`: with hardener, thinner and abrasive; products that
 *   are not in the catalogue are left out
 *
 * Source: definition. Valid range: any. Departures: none. Example: a two-part clear coat: itself, and its hardener.
 */
export function stepProducts(
  { productId, blendId, thinnerId, thinning }: RecipeStep,
  { blends, catalogue }: Pick<ProjectInput, 'blends' | 'catalogue'>,
): { readonly laid: readonly Product[]; readonly all: readonly Product[] } {
  const named = (ids: readonly string[]): Product[] =>
    ids.flatMap((id) => catalogue.products.find((product) => product.id === id) ?? []);
  const blend = blends.find(({ id }) => id === blendId);
  const laid = named(
    blend === undefined ? [productId] : blend.components.map((component) => component.productId),
  );
  const hardeners = laid.flatMap(({ choices }) => choices.hardenerId ?? []);
  return { laid, all: [...laid, ...named([...hardeners, ...(thinning > 0 ? [thinnerId] : [])])] };
}
