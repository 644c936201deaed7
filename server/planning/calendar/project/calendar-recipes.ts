import type { Problem } from '../../problem.ts';
import type { Product } from '../../product.ts';
import { COAT_STEPS, type ProjectInput, type RecipeStep } from '../../project-input.ts';
import type { CalendarRecipe, CalendarStep, CoatFacts } from '../calendar-input.ts';
import { coatFacts } from '../coat-facts.ts';
import { calendarProblem } from './calendar-problem.ts';
import { stepProducts } from './step-products.ts';

/**
 * What do the recipes of a project ask of the calendar?
 *
 * @param input recipes, blends and catalogue
 * @param arrivals product id to the minute it is in the shop
 * @returns recipes with label figures, and problems
 *
 * Source: the products' label figures, see coatFacts. Valid range: any project. Departures: a conditioner whose time to
 * handle is not known is taken to be dry to handle when touch dry, as its surplus is wiped off; a rule of ours, said in a
 * note. Working time limits a batch only where a product is wiped; see wetEdgeProblems for the rest. A recoat interval that ends before it begins is left out, with a problem.
 * Example: a step of a blend takes the more careful figures of its components.
 */
export function calendarRecipes(
  input: ProjectInput,
  arrivals: ReadonlyMap<string, number>,
): { readonly recipes: readonly CalendarRecipe[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const used = new Set(input.parts.flatMap(({ showRecipeId, backRecipeId }) => [showRecipeId, backRecipeId]));
  const recipes = input.recipes.map(({ id, name, faces, steps }) => ({
    id,
    name: name.trim() === '' ? `Recipe ${id}` : name,
    faces,
    steps: steps.map((step) => calendarStep(step, used.has(id))),
  }));
  return { recipes, problems };

  function calendarStep(step: RecipeStep, isUsed: boolean): CalendarStep {
    const { id, kind, coats, method } = step;
    const { laid, all } = stepProducts(step, input);
    const coat =
      (COAT_STEPS as readonly string[]).includes(kind) && laid.length > 0
        ? factsOf(step, laid, isUsed)
        : null;
    const blend = input.blends.find((one) => one.id === step.blendId);
    const materialMinute = Math.max(0, ...all.map((product) => arrivals.get(product.id) ?? 0));
    return { id, kind, name: blend?.name ?? laid[0]?.name ?? '', coats, method, coat, materialMinute };
  }

  function factsOf(step: RecipeStep, laid: readonly Product[], isUsed: boolean): CoatFacts {
    const facts = coatFacts(laid);
    const recoat = facts.recoat.filter(
      ({ fromMin, toMin }) => fromMin >= 0 && (toMin === null || toMin >= fromMin),
    );
    for (const product of laid)
      for (const { fromMin, toMin } of product.recoat)
        if (isUsed && toMin !== null && toMin < fromMin && !problems.some(({ at }) => at.id === product.id))
          problems.push(
            calendarProblem(
              'recoat-backwards',
              'error',
              ['products', product.id, 'recoat'],
              `“${product.name}” may be recoated from ${fromMin} to ${toMin} min, which ends before it begins.`,
              'Correct the recoat times of the product in the catalogue.',
            ),
          );
    const wiped = step.kind === 'condition' && facts.handleDryMin === null;
    const handleDryMin = wiped ? (facts.touchDryMin ?? recoat[0]?.fromMin ?? null) : facts.handleDryMin;
    if (wiped && handleDryMin !== null && isUsed)
      problems.push(
        calendarProblem(
          'drying-time-missing',
          'note',
          ['steps', step.id, null],
          `When “${laid[0]?.name ?? ''}” is dry to handle is not known; as it is wiped off, it is taken to be so when touch dry.`,
          'Enter its time to handle from the label in the catalogue, if it has one.',
        ),
      );
    // A film keeps its wet edge surface by surface; only what is flooded on and wiped off is one race for the whole batch.
    const workingTimeMin = step.method === 'wipe' ? facts.workingTimeMin : null;
    return { ...facts, recoat, handleDryMin, workingTimeMin };
  }
}
