import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { name, slug } from './name-schema.ts';

const step = z.strictObject({
  kind: z.enum(['sand', 'dust', 'condition', 'stain', 'seal', 'topcoat', 'scuff', 'cure']),
  productId: z.exactOptional(slug),
  coats: z.exactOptional(z.number().int().min(1).max(20)),
  method: z.exactOptional(z.enum(['brush', 'roller', 'wipe', 'spray-hvlp', 'spray-airless', 'spray-air'])),
  note: z.exactOptional(name),
});

export const starterRecipeSchema = z
  .strictObject({
    id: slug,
    name,
    /** What it is good for, and what it asks of the shop. */
    summary: name,
    faces: z.enum(['flip', 'points']),
    source: name,
    steps: z.array(step).min(1),
  })
  .meta({ id: 'StarterRecipe' });

export type StarterRecipe = z.output<typeof starterRecipeSchema>;

/** Usual recipes to begin with, from starter-recipes.json. Throws Error, with all the faults, when the file is wrong. */
export function readStarterRecipes(): StarterRecipe[] {
  const rows: unknown = JSON.parse(readFileSync(new URL('starter-recipes.json', import.meta.url), 'utf8'));
  const read = z.array(starterRecipeSchema).safeParse(rows);
  if (!read.success) throw new Error(`The starter recipes are wrong:\n${z.prettifyError(read.error)}`);
  return read.data;
}
