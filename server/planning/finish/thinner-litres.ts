import { requireNumber } from './require-number.ts';

/**
 * How much thinner goes into the litres of a coat?
 *
 * @param litres liquid without thinner, L, 0 or more
 * @param thinning thinner as a share of that volume, 0 or more (0.1 = 10 %)
 * @returns thinner, L
 *
 * Source: definition of thinning by volume. Valid for any share. Departures: none.
 * Example: 1 L thinned 2 to 1 for a washcoat: 1 x 2 = 2 L of thinner.
 */
export function thinnerLitres({
  litres,
  thinning,
}: {
  readonly litres: number;
  readonly thinning: number;
}): number {
  requireNumber('thinnerLitres: litres', litres, { atLeast: 0 }, 'L');
  requireNumber('thinnerLitres: thinning', thinning, { atLeast: 0 }, '(share)');
  return litres * thinning;
}
