import { requireWithin } from '../climate/require-within.ts';
import { LEL_CEILING_SHARE, LITRES_PER_M3 } from './constants.ts';

/**
 * How much fresh air must a quantity of vapour be spread through to stay at a share of the lower explosive limit?
 *
 * @param vapourL litres of pure vapour (vapourVolumeL)
 * @param lelPercent lower explosive limit, percent by volume
 * @param share share of that limit, 0.25 for the ceiling and 0.1 for the target
 * @returns cubic metres of air
 *
 * Source: from memory, 29 CFR 1910.94(c)(6)(ii): air = 4 x (100 - LEL) x vapour / LEL for 25 percent; the regulation was
 * not read, only its arithmetic checked. Valid range: LEL above 0 to 100 %, share above 0 to 1; else a RangeError.
 * Departures: 4 is written as 1 / share, so that other shares can be asked for; the formula then counts the vapour's own
 * room as at the full limit, which asks for slightly too little air, by less than LEL percent.
 * Example: toluene, LEL 1.4 %, 30.4 ft3 of vapour per gallon: 4 x 98.6 x 30.4 / 1.4 = 8564 ft3 per gallon.
 */
export function lelDilutionAirM3(
  vapourL: number,
  lelPercent: number,
  share: number = LEL_CEILING_SHARE,
): number {
  requireWithin('vapourL', vapourL, 0, Infinity, 'L');
  requireWithin('lelPercent', lelPercent, Number.MIN_VALUE, 100, '% by volume');
  requireWithin('share', share, Number.MIN_VALUE, 1, '');
  return ((100 - lelPercent) * vapourL) / (share * lelPercent * LITRES_PER_M3);
}
