import type { CoatPlan, CoatShare, RecipePlan } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';
import type { ProductDemand } from './product-demand.ts';
import { readFigure } from './read-figure.ts';

/**
 * What do the coats and passes of all recipes need of each product?
 *
 * @param recipes planned recipes
 * @returns one demand per coat and product, in the product's unit. At another end of the coverage range a share
 *   grows as the coat's litres do.
 *
 * Source: follows from `planCoat` and `planDryPass`. A finish counted in grams is converted with its density by
 * definition; a liquid counted in pieces or metres cannot be, and is unknown.
 */
export function coatDemands(
  input: ProjectInput,
  recipes: readonly RecipePlan[],
  products: ReadonlyMap<string, Product>,
): readonly ProductDemand[] {
  const abrasiveOf = new Map(
    input.recipes.flatMap(({ id, steps }) => steps.map((step) => [`${id}/${step.id}`, step.productId])),
  );
  return recipes.flatMap((recipe) =>
    recipe.coats.flatMap((coat): readonly ProductDemand[] => {
      const path = `recipes/${recipe.id}/coats/${coat.id}`;
      const name = `${recipe.name}: ${coat.kind} ${coat.number}`;
      const notes = (recipe.areaM2.working.notes ?? []).map((note) => `${recipe.name}: ${note}`);
      if (coat.method !== null)
        return coat.shares.map((share) => shareDemand(share, coat, { path, name, notes }, products));
      const productId = abrasiveOf.get(`${recipe.id}/${coat.stepId}`) ?? '';
      const product = products.get(productId);
      if (product === undefined || coat.name === '') return [];
      const need = product.unit === 'pcs' ? coat.pieces.value : null;
      const from = `${path}/pieces`;
      return [{ productId, name, need, atCoverage: { low: need, typical: need, high: need }, from, notes }];
    }),
  );
}

function shareDemand(
  { id, litres }: CoatShare,
  coat: CoatPlan,
  words: { readonly path: string; readonly name: string; readonly notes: readonly string[] },
  products: ReadonlyMap<string, Product>,
): ProductDemand {
  const perLitre = unitsPerLitre(products.get(id));
  const at = (coatLitres: number | null): number | null => {
    if (coatLitres === null || litres.value === null || coat.litres.value === null || perLitre === null)
      return null;
    return coat.litres.value === 0 ? 0 : litres.value * perLitre * (coatLitres / coat.litres.value);
  };
  return {
    productId: id,
    name: words.name,
    need: litres.value === null || perLitre === null ? null : litres.value * perLitre,
    atCoverage: {
      low: at(coat.litresAtLowCoverage.value),
      typical: at(coat.litresAtTypicalCoverage.value),
      high: at(coat.litresAtHighCoverage.value),
    },
    from: `${words.path}/shares/${id}/litres`,
    notes:
      perLitre === null
        ? [
            ...words.notes,
            'The coat is reckoned in litres, but the product is not counted in litres or by density.',
          ]
        : words.notes,
  };
}

function unitsPerLitre(product: Product | undefined): number | null {
  if (product?.unit === 'L') return 1;
  return product?.unit === 'g' ? readFigure(product, 'density').value : null;
}
