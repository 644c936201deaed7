import { WOOD_K, WOOD_K1, WOOD_K2, WOOD_MAX_C, WOOD_MIN_C, WOOD_W, WOOD_WATER_TERM } from './constants.ts';
import { requireWithin } from './require-within.ts';

/**
 * What moisture content does wood settle at in this air, given time?
 *
 * @param airC air temperature, C
 * @param relativeHumidityPercent relative humidity, percent
 * @returns equilibrium moisture content, percent of dry mass
 *
 * Source: the two-hydrate sorption equation in its Celsius form, Simpson, FPL-RN-0268, 1998, behind Table 4-2 of the
 * Wood Handbook, FPL-GTR-190, 2010. Valid range: -1.2 to 132.3 C, 0 to 100 %; outside it a RangeError. The table itself
 * ends at 95 %; FPL-GTR-229 (2014) warns that the data behind it are a practical guide, not a measurement of a species.
 * Departures: none.
 * Example: 20 C and 50 % is 9.27 %.
 */
export function equilibriumMoisturePercent(airC: number, relativeHumidityPercent: number): number {
  requireWithin('airC', airC, WOOD_MIN_C, WOOD_MAX_C, 'C');
  requireWithin('relativeHumidityPercent', relativeHumidityPercent, 0, 100, '%');
  const humidity = relativeHumidityPercent / 100;
  const k1 = quadratic(WOOD_K1, airC);
  const k2 = quadratic(WOOD_K2, airC);
  const kh = quadratic(WOOD_K, airC) * humidity;
  const hydrates = (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2);
  return (WOOD_WATER_TERM / quadratic(WOOD_W, airC)) * (kh / (1 - kh) + hydrates);
}

function quadratic([constant, linear, square]: readonly [number, number, number], airC: number): number {
  return constant + airC * (linear + airC * square);
}
