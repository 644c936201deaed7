import type { ProjectState, RecipeRow } from '../../../server/http/contract.ts';
import type { Catalogue, Product } from '../../../server/planning/product.ts';
import type { ProjectSettings } from '../../../server/planning/project-input.ts';
import type { Choice } from '../../grid/grid-column.ts';
import { productSwatch } from './product-swatch.ts';

/** What the cells of the part list need to know beside their own row; a new object whenever any of it changes. */
export interface PartBook {
  readonly settings: ProjectSettings;
  readonly products: ReadonlyMap<string, Product>;
  readonly recipes: ReadonlyMap<string, RecipeRow>;
  readonly materialChoices: readonly Choice[];
  readonly edgeChoices: readonly Choice[];
  readonly recipeChoices: readonly Choice[];
}

export const HIDDEN_EDGE = 'hidden';
export const BARE_EDGE = 'bare';

export function partBook(project: ProjectState, catalogue: Catalogue): PartBook {
  const offered = catalogue.products.filter((product) => !product.retired);
  return {
    settings: project.settings,
    products: new Map(catalogue.products.map((product) => [product.id, product])),
    recipes: new Map(project.rows.recipes.map((recipe) => [recipe.id, recipe])),
    materialChoices: [
      { value: '', text: 'no material', hint: 'not chosen yet' },
      ...offered.filter(({ kind }) => kind === 'sheet' || kind === 'board').map(productChoice),
    ],
    edgeChoices: [
      { value: HIDDEN_EDGE, text: 'hidden', hint: 'in a joint or against a wall' },
      { value: BARE_EDGE, text: 'bare', hint: 'seen and finished, not banded' },
      ...offered.filter(({ kind }) => kind === 'banding').map(productChoice),
    ],
    recipeChoices: [
      { value: '', text: 'no finish', hint: 'this face stays raw' },
      ...project.rows.recipes.map(({ id, name }) => ({ value: id, text: name })),
    ],
  };
}

function productChoice(product: Product): Choice {
  const choice = { value: product.id, text: product.shortName, detail: product.name };
  return product.kind === 'banding' ? { ...choice, swatch: productSwatch(product) } : choice;
}
