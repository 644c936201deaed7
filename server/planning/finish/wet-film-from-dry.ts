import { requireNumber } from './require-number.ts';

/**
 * How thick must a coat be laid wet, to dry to a given film? The figure a wet-film comb is held against.
 *
 * @param dryFilmUm dry film of one coat, um, above 0
 * @param solidsPercent solids by volume as supplied, percent, above 0 to 100
 * @param thinning thinner mixed in, as a share of the product's volume, 0 for none
 * @returns wet film, um
 *
 * Source: trade coverage chart, WFT = DFT / VS; thinned, WFT = DFT x (1 + thinner share) / VS.
 * Valid for films that stay on the surface. Departures: none.
 *
 * Example: 28 um dry at 35 % solids, unthinned: 28 / 0.35 = 80 um wet.
 */
export function wetFilmFromDry({
  dryFilmUm,
  solidsPercent,
  thinning,
}: {
  readonly dryFilmUm: number;
  readonly solidsPercent: number;
  readonly thinning: number;
}): number {
  requireNumber('wetFilmFromDry: dryFilmUm', dryFilmUm, { above: 0 }, 'um');
  requireNumber('wetFilmFromDry: solidsPercent', solidsPercent, { above: 0, atMost: 100 }, 'percent');
  requireNumber('wetFilmFromDry: thinning', thinning, { atLeast: 0 }, '(share)');
  return (dryFilmUm * (1 + thinning)) / (solidsPercent / 100);
}
