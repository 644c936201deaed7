import type { Recipe, RecipeStep } from '../project-input.ts';

/**
 * What is a step called in a sentence? Steps have no name of their own.
 *
 * @returns `Step 3 (stain) of "Clear satin"`
 *
 * No source: a wording of ours.
 */
export function stepLabel(recipe: Recipe, step: RecipeStep): string {
  return `Step ${recipe.steps.indexOf(step) + 1} (${step.kind}) of "${recipe.name}"`;
}
