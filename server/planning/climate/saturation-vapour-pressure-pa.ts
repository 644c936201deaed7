import {
  ICE_CURVE,
  SATURATION_MAX_C,
  SATURATION_MIN_C,
  TRIPLE_POINT_C,
  WATER_CURVE,
  ZERO_C_IN_KELVIN,
} from './constants.ts';
import { requireWithin } from './require-within.ts';
import { logSaturation } from './saturation-curve.ts';

/**
 * How much water vapour can air hold at a temperature, as a pressure?
 *
 * @param airC air temperature, C
 * @returns saturation vapour pressure, Pa; over ice up to 0.01 C, over liquid water above
 *
 * Source: ASHRAE Handbook of Fundamentals 2017, chapter 1, equations 5 (ice) and 6 (water), after Hyland and Wexler.
 * Valid range: -100 to 200 C; outside it a RangeError. Departure: the change from ice to water is made at the triple
 * point, 0.01 C, where the curves agree to 6e-9; the source makes it at 0 C, where they step by 0.01 %. The Magnus form is not shipped: one curve serves pressure, dew point and
 * deficit alike, so that saturated air has its dew point exactly at its own temperature.
 * Example: at 20 C, 2338.80 Pa.
 */
export function saturationVapourPressurePa(airC: number): number {
  requireWithin('airC', airC, SATURATION_MIN_C, SATURATION_MAX_C, 'C');
  return Math.exp(logSaturation(airC <= TRIPLE_POINT_C ? ICE_CURVE : WATER_CURVE, airC + ZERO_C_IN_KELVIN));
}
