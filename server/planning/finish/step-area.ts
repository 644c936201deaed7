import type { Figure } from '../figure.ts';

/**
 * Which area does a coat of a step cover? The recipe's, unless the number of coats cannot be used: then it is unknown,
 * so that nothing computed from it looks complete.
 *
 * @param areaM2 area of the recipe, m2
 * @param coats number of coats; null when it cannot be used
 *
 * No source: a definition of ours.
 */
export function stepArea(areaM2: Figure, coats: number | null): Figure {
  if (coats !== null) return areaM2;
  const notes = [...(areaM2.working.notes ?? []), 'The number of coats of this step cannot be used.'];
  return { ...areaM2, value: null, working: { ...areaM2.working, notes } };
}
