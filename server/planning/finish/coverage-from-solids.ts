import { M2_UM_PER_LITRE_PERCENT } from './constants.ts';
import { requireNumber } from './require-number.ts';

/**
 * What area does a litre cover, when only its solids and the dry film it should leave are known?
 *
 * @param solidsPercent solids by volume as supplied, percent, above 0 to 100
 * @param dryFilmUm dry film of one coat, um, above 0
 * @returns theoretical spreading rate, m2/L, with nothing lost
 *
 * Source: published spreading-rate notes, m2/L = 10 x VS% / DFT in um; exact geometry (a litre of solids at 1 um
 * covers 1000 m2).
 * Valid for films that stay on the surface. For the first coat on bare, absorbing wood no theoretical rate can be
 * given (same notes); that is what the first-coat factor is for.
 * Departure: one published sheet prints 100 in place of 1000 for the fraction form; its own worked line uses 1000.
 *
 * Example: 35 % solids at 28 um dry: 10 x 35 / 28 = 12.5 m2/L.
 */
export function coverageFromSolids({
  solidsPercent,
  dryFilmUm,
}: {
  readonly solidsPercent: number;
  readonly dryFilmUm: number;
}): number {
  requireNumber('coverageFromSolids: solidsPercent', solidsPercent, { above: 0, atMost: 100 }, 'percent');
  requireNumber('coverageFromSolids: dryFilmUm', dryFilmUm, { above: 0 }, 'um');
  return (M2_UM_PER_LITRE_PERCENT * solidsPercent) / dryFilmUm;
}
