import type { PartPlan, RecipePlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { ProjectInput, Recipe } from '../project-input.ts';
import { MAX_LOSS_SHARE } from './constants.ts';
import { planStep } from './plan-step.ts';
import { recipeAreas } from './recipe-areas.ts';

/**
 * What does each finish recipe cover and take, coat by coat?
 *
 * @param parts planned parts; areas in m2 per piece
 * @returns a plan per recipe in the project's order, and each problem once
 *
 * Source: `recipeAreas`, `planStep`; nothing is computed here.
 */
export function planFinish(
  input: ProjectInput,
  parts: readonly PartPlan[],
): { readonly recipes: readonly RecipePlan[]; readonly problems: readonly Problem[] } {
  const { areas, problems: areaProblems } = recipeAreas(input, parts);
  const { finishLoss } = input.settings;
  const lossFits = finishLoss >= 0 && finishLoss <= MAX_LOSS_SHARE;
  const common = {
    products: new Map(input.catalogue.products.map((product) => [product.id, product])),
    blends: new Map(input.blends.map((blend) => [blend.id, blend])),
    settings: input.settings,
    lossShare: lossFits ? finishLoss : null,
  };
  const problems: Problem[] = [...areaProblems, ...(lossFits ? [] : [lossInvalid(finishLoss)])];
  const recipes = input.recipes.map((recipe): RecipePlan => {
    const area = areas.get(recipe.id);
    if (area === undefined) throw new RangeError(`planFinish: recipe ${recipe.id} has no area`);
    const steps = recipe.steps.map((step) => planStep(step, { ...common, recipe, area }));
    problems.push(...recipeProblems(recipe, area.used), ...steps.flatMap((step) => step.problems));
    const { used: _used, ...figures } = area;
    return { id: recipe.id, name: recipe.name, ...figures, coats: steps.flatMap((step) => step.coats) };
  });
  return { recipes, problems: once(problems) };
}

function recipeProblems(recipe: Recipe, used: boolean): readonly Problem[] {
  const empty: Problem = {
    code: 'recipe-empty',
    severity: 'warning',
    at: { table: 'recipes', id: recipe.id, field: 'steps' },
    message: `The recipe "${recipe.name}" has no steps.`,
    wayOut: 'Add its steps, from sanding to the last coat.',
  };
  const unused: Problem = {
    code: 'recipe-unused',
    severity: 'note',
    at: { table: 'recipes', id: recipe.id, field: null },
    message: `The recipe "${recipe.name}" is on no part's face.`,
    wayOut: 'Choose it for a face of a part, or delete it.',
  };
  return [...(recipe.steps.length === 0 ? [empty] : []), ...(used ? [] : [unused])];
}

function lossInvalid(finishLoss: number): Problem {
  return {
    code: 'setting-invalid',
    severity: 'error',
    at: { table: 'settings', id: null, field: 'finishLoss' },
    message: `The share of finish lost is ${finishLoss}, which is not from 0 to ${MAX_LOSS_SHARE}.`,
    wayOut: 'Enter 0.05 for 5 %.',
  };
}

/** A blend used by two steps reports what is wrong with it once. */
function once(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Set<string>();
  return problems.filter(({ code, at }) => {
    const key = JSON.stringify([code, at.table, at.id, at.field]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
