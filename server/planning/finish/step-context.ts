import type { CoatPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { Blend, ProjectSettings, Recipe } from '../project-input.ts';
import type { RecipeArea } from './recipe-areas.ts';

export interface StepContext {
  readonly recipe: Recipe;
  readonly area: RecipeArea;
  readonly products: ReadonlyMap<string, Product>;
  readonly blends: ReadonlyMap<string, Blend>;
  readonly settings: ProjectSettings;
  /** Null when the project's loss setting cannot be used. */
  readonly lossShare: number | null;
}

export interface StepPlan {
  readonly coats: readonly CoatPlan[];
  readonly problems: readonly Problem[];
}
