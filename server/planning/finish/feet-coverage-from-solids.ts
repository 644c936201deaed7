import { FT2_MIL_PER_GALLON_SOLIDS } from './constants.ts';
import { requireNumber } from './require-number.ts';

/**
 * The same spreading rate in the units US labels print: square feet per gallon. It checks `coverageFromSolids` and
 * is shown beside it.
 *
 * @param solidsPercent solids by volume as supplied, percent, above 0 to 100
 * @param dryFilmMil dry film of one coat, mil (0.001 in), above 0
 * @returns theoretical spreading rate, ft2 per US gallon
 *
 * Source: trade coverage chart, ft2/gal = 1604 x VS / DFT in mil (finishing Q&A, paintcenter.org, December 2007).
 * Valid for films that stay on the surface.
 * Departure: none. 1604 is the printed rounding of 1604.17, so this differs from the metric rule by 0.01 %.
 *
 * Example: 25 % solids at 1 mil: 1604 x 0.25 = 401 ft2/gal.
 */
export function feetCoverageFromSolids({
  solidsPercent,
  dryFilmMil,
}: {
  readonly solidsPercent: number;
  readonly dryFilmMil: number;
}): number {
  requireNumber('feetCoverageFromSolids: solidsPercent', solidsPercent, { above: 0, atMost: 100 }, 'percent');
  requireNumber('feetCoverageFromSolids: dryFilmMil', dryFilmMil, { above: 0 }, 'mil');
  return (FT2_MIL_PER_GALLON_SOLIDS * solidsPercent) / 100 / dryFilmMil;
}
