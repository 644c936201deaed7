import type { ProjectInput } from '../../planning/project-input.ts';

/** Names for the ids that rows hold; an id nothing is known of stands for itself. */
export interface NameBook {
  /** Short name, as grid cells show it and the import reads it. */
  readonly product: (id: string) => string;
  readonly productFull: (id: string) => string;
  readonly recipe: (id: string) => string;
  /** `hidden`, `bare` or the banding's short name. */
  readonly edge: (treatment: string) => string;
}

export function nameBook({ catalogue, recipes }: ProjectInput): NameBook {
  const products = new Map(catalogue.products.map((product) => [product.id, product]));
  const recipeNames = new Map(recipes.map(({ id, name }) => [id, name]));
  const product = (id: string): string => products.get(id)?.shortName ?? id;
  return {
    product,
    productFull: (id) => products.get(id)?.name ?? id,
    recipe: (id) => recipeNames.get(id) ?? id,
    edge: product,
  };
}
