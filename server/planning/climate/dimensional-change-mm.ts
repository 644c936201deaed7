import { FIBRE_SATURATION_PERCENT, MOVEMENT_MAX_PERCENT, MOVEMENT_MIN_PERCENT } from './constants.ts';
import { requireWithin } from './require-within.ts';

export interface DimensionalChange {
  /** Above 0 the piece grows, below 0 it shrinks. */
  readonly changeMm: number;
  /** False when either moisture content lies outside the 6 to 14 % the coefficients were given for. */
  readonly withinPublishedRange: boolean;
}

/**
 * How much wider or narrower does solid wood get when its moisture content changes?
 *
 * @param widthMm width across the grain at the start, mm
 * @param coefficientPerPercent radial or tangential coefficient of WOOD_MOVEMENT, share of width per percent
 * @param fromPercent moisture content at the start, percent
 * @param toPercent moisture content at the end, percent
 * @returns change of width, mm, and whether both moisture contents lie in the published range
 *
 * Source: change = initial dimension x coefficient x (final - initial moisture content), Wood Handbook, FPL-GTR-190,
 * 2010, with Table 13-5. Valid range: 6 to 14 %; the same line is carried on from 0 to 30 % and flagged; beyond, a
 * RangeError. Departures: that carrying-on, because a shop does meet wood at 5 or 16 %.
 * Example: red oak, flat-sawn, 100 mm, 8 to 11 %: 100 x 0.00369 x 3 = 1.107 mm wider.
 */
export function dimensionalChangeMm(
  widthMm: number,
  coefficientPerPercent: number,
  fromPercent: number,
  toPercent: number,
): DimensionalChange {
  requireWithin('widthMm', widthMm, 0, Infinity, 'mm');
  requireWithin('coefficientPerPercent', coefficientPerPercent, 0, 0.01, 'per percent');
  requireWithin('fromPercent', fromPercent, 0, FIBRE_SATURATION_PERCENT, '%');
  requireWithin('toPercent', toPercent, 0, FIBRE_SATURATION_PERCENT, '%');
  const changeMm = widthMm * coefficientPerPercent * (toPercent - fromPercent);
  const published = (percent: number) => percent >= MOVEMENT_MIN_PERCENT && percent <= MOVEMENT_MAX_PERCENT;
  return {
    changeMm: changeMm === 0 ? 0 : changeMm,
    withinPublishedRange: published(fromPercent) && published(toPercent),
  };
}
