import { z } from 'zod';
import {
  readStarterRecipes,
  type StarterRecipe,
  starterRecipeSchema,
} from '../../../db/catalogue/read-starter-recipes.ts';
import { type Route, route } from '../route.ts';

let recipes: readonly StarterRecipe[] | null = null;

/** Usual recipes to begin with. */
export const starterRecipeRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/starter-recipes',
    summary: 'Usual finish recipes to begin with; their products are of the shipped catalogue.',
    group: 'catalogue',
    answer: z.strictObject({ recipes: z.array(starterRecipeSchema) }).meta({ id: 'StarterRecipes' }),
    handle: () => {
      recipes ??= readStarterRecipes();
      return { recipes };
    },
  }),
];
