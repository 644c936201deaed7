import { WHOLE_NUMBER_DUST } from './constants.ts';
import { requireNumber } from './require-number.ts';

/**
 * Into how many mixes must a two-part coat be split, so that each is used up within its pot life?
 *
 * @param minutes time to lay the coat, min, 0 or more
 * @param potLifeMin pot life, min, above 0
 * @returns whole mixes, rounded up; 0 when there is nothing to lay
 *
 * Source: definition of pot life (a mix must be used within it). Valid at the temperature the pot life is given for;
 * heat shortens it. Departure: less than a billionth over a whole number counts as the whole number.
 * Example: 50 min of brushing at a pot life of 30 min: 2 mixes.
 */
export function mixesForPotLife({
  minutes,
  potLifeMin,
}: {
  readonly minutes: number;
  readonly potLifeMin: number;
}): number {
  requireNumber('mixesForPotLife: minutes', minutes, { atLeast: 0 }, 'min');
  requireNumber('mixesForPotLife: potLifeMin', potLifeMin, { above: 0 }, 'min');
  if (minutes === 0) return 0;
  const mixes = minutes / potLifeMin;
  return Math.max(1, Math.ceil(mixes - mixes * WHOLE_NUMBER_DUST));
}
