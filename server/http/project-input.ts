import type { StoredProject } from '../../db/project-rows.ts';
import type { Catalogue } from '../planning/product.ts';
import type { ProjectInput } from '../planning/project-input.ts';

/** A stored project as the planner takes it: steps within their recipes, components within their blends. */
export function projectInput({ settings, rows }: StoredProject, catalogue: Catalogue): ProjectInput {
  return {
    settings,
    sizes: rows.sizes.map(withoutPosition),
    parts: rows.parts.map(withoutPosition),
    recipes: rows.recipes.map((recipe) => ({
      ...withoutPosition(recipe),
      steps: rows.steps
        .filter((step) => step.recipeId === recipe.id)
        .map(({ recipeId, position, ...step }) => step),
    })),
    blends: rows.blends.map((blend) => ({
      ...withoutPosition(blend),
      components: rows.components
        .filter((component) => component.blendId === blend.id)
        .map(({ blendId, position, ...component }) => component),
    })),
    rules: rows.rules.map(withoutPosition),
    extras: rows.extras.map(withoutPosition),
    onHand: rows.onHand.map(withoutPosition),
    measurements: rows.measurements.map(withoutPosition),
    catalogue,
  };
}

function withoutPosition<Row extends { readonly position: number }>({ position, ...row }: Row) {
  return row;
}
