import { expect, it } from 'vitest';
import { starterChanges } from '../../client/screens/finish/starter-recipes.ts';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import { readStarterRecipes } from '../../db/catalogue/read-starter-recipes.ts';
import type { ProjectState, StarterRecipe } from '../../server/http/contract.ts';
import { openApp } from './open-app.ts';

const products = new Map(readCatalogue().products.map((product) => [product.id, product]));
/** What each kind of step may use. */
const FITTING = {
  sand: ['abrasive'],
  scuff: ['abrasive'],
  condition: ['finish'],
  stain: ['finish'],
  seal: ['finish'],
  topcoat: ['finish'],
  dust: [],
  cure: [],
} as const;

it.each(readStarterRecipes())('“$name” uses products of the catalogue that fit its steps', ({ steps }) => {
  for (const { kind, productId } of steps) {
    const fitting: readonly string[] = FITTING[kind];
    expect(productId !== undefined, kind).toBe(fitting.length > 0);
    if (productId !== undefined) expect(fitting).toContain(products.get(productId)?.kind);
  }
  expect(steps.at(-1)?.kind).toBe('cure');
});

it('can be added to a project as they are, each in one step of undo, and wait only for parts', async () => {
  const { send } = openApp();
  const { recipes } = (await send('get', '/api/starter-recipes')).body as {
    recipes: readonly StarterRecipe[];
  };
  expect(recipes.length).toBeGreaterThan(3);
  const made = await send('post', '/api/projects', { name: 'Stool', units: 'metric', currency: 'EUR' });
  let state = made.body as ProjectState;
  const path = `/api/projects/${state.id}`;
  const read = async (): Promise<ProjectState> => (await send('get', path)).body as ProjectState;
  for (const recipe of recipes) {
    await send('post', `${path}/changes`, {
      revision: state.revision,
      changes: starterChanges(recipe, products),
    });
    state = await read();
  }
  expect(state.rows.recipes.map(({ name }) => name)).toEqual(recipes.map(({ name }) => name));
  expect(state.rows.steps).toHaveLength(recipes.reduce((sum, { steps }) => sum + steps.length, 0));
  expect(new Set(state.plan.problems.map(({ code }) => code))).toEqual(new Set(['recipe-unused']));
  await send('post', `${path}/undo`, { revision: state.revision });
  expect((await read()).rows.recipes).toHaveLength(recipes.length - 1);
});

it('leave a step open whose product is no longer offered', () => {
  const [recipe] = readStarterRecipes();
  if (recipe === undefined) throw new Error('no recipe');
  const steps = starterChanges(recipe, new Map()).slice(1);
  expect(steps).toHaveLength(recipe.steps.length);
  for (const step of steps) expect('values' in step && 'productId' in step.values).toBe(false);
});
