import type { PartPlan, RecipePlan } from '../plan-output.ts';
import { COAT_STEPS, type PartInput, type ProjectInput } from '../project-input.ts';

/** How much of each product the parts take: product id to one weight per part, in the order of the parts. */
export type PartUses = ReadonlyMap<string, readonly number[]>;

/**
 * How much does each part take of each product?
 *
 * Sheets by cut area, boards by cut length, banding by the length of its strips; what coats and sanding take by the part's
 * area under the recipe; what usage rates take by what the rate counts. All pieces of the row.
 *
 * @returns weights, not amounts: only their proportion within one product means something. A part whose sizes are unknown
 *   takes nothing.
 *
 * Source: rule of ours, following the plan's own needs.
 */
export function partUses(
  input: ProjectInput,
  plan: { readonly parts: readonly PartPlan[]; readonly recipes: readonly RecipePlan[] },
): PartUses {
  const uses = new Map<string, number[]>();
  const count = plan.parts.length;
  const add = (productId: string, index: number, weight: number): void => {
    if (productId === '' || !(weight > 0)) return;
    const weights = uses.get(productId) ?? Array<number>(count).fill(0);
    weights[index] = (weights[index] ?? 0) + weight;
    uses.set(productId, weights);
  };
  const rowOf = new Map(input.parts.map((part) => [part.id, part]));
  const boards = new Set(input.catalogue.products.filter(({ kind }) => kind === 'board').map(({ id }) => id));
  const takers = input.recipes.map((recipe) => ({
    recipe,
    uses: recipeUses(recipe.id, input, plan.recipes),
  }));
  for (const [index, part] of plan.parts.entries()) {
    const row = rowOf.get(part.id);
    if (row === undefined) throw new RangeError(`partUses: part ${part.id} is not in the project`);
    const pieces = part.quantity.value ?? 0;
    const widthMm = boards.has(row.materialId) ? 1 : (part.cutWidthMm.value ?? 0);
    add(row.materialId, index, pieces * (part.cutLengthMm.value ?? 0) * widthMm);
    for (const { bandingId, stripMm } of part.strips) add(bandingId, index, pieces * (stripMm.value ?? 0));
    let coatAreaM2 = 0;
    for (const { recipe, uses: taken } of takers) {
      const areaM2 = pieces * recipeAreaOf(row, part, recipe.id);
      coatAreaM2 += areaM2 * taken.coats;
      for (const [productId, perM2] of taken.products) add(productId, index, areaM2 * perM2);
    }
    const bases = {
      'finish-area': part.totalFinishM2.value ?? 0,
      'coat-area': coatAreaM2,
      'banding-metre': part.totalBandedM.value ?? 0,
      part: pieces,
      project: pieces,
    };
    for (const rule of input.rules) add(rule.productId, index, bases[rule.per] * (rule.rate ?? 1));
  }
  return uses;
}

/** The area of one piece that gets a recipe, m2; seen edges follow the show face, or the back where it has none. */
function recipeAreaOf(row: PartInput, part: PartPlan, recipeId: string): number {
  const edges = row.showRecipeId === '' ? row.backRecipeId : row.showRecipeId;
  return (
    (row.showRecipeId === recipeId ? (part.showFaceM2.value ?? 0) : 0) +
    (row.backRecipeId === recipeId ? (part.backFaceM2.value ?? 0) : 0) +
    (edges === recipeId ? (part.seenEdgeM2.value ?? 0) : 0)
  );
}

/** What the coats and passes of a recipe take per square metre of it, and how many coats are laid. */
function recipeUses(recipeId: string, input: ProjectInput, recipes: readonly RecipePlan[]) {
  const recipe = recipes.find(({ id }) => id === recipeId);
  const areaM2 = recipe?.areaM2.value ?? 0;
  const products = new Map<string, number>();
  if (recipe === undefined || areaM2 <= 0) return { products, coats: 0 };
  const steps = new Map(
    input.recipes.flatMap(({ steps: those }) => those.map((step) => [step.id, step] as const)),
  );
  const add = (id: string, amount: number | null): void => {
    if (amount !== null) products.set(id, (products.get(id) ?? 0) + amount / areaM2);
  };
  for (const coat of recipe.coats) {
    for (const { id, litres } of coat.shares) add(id, litres.value);
    const step = steps.get(coat.stepId);
    if (step !== undefined && coat.shares.length === 0) add(step.productId, coat.pieces.value);
  }
  const coats = recipe.coats.filter(({ kind }) => (COAT_STEPS as readonly string[]).includes(kind)).length;
  return { products, coats };
}
