import { requireWithin } from './require-within.ts';
import { saturationVapourPressurePa } from './saturation-vapour-pressure-pa.ts';

/**
 * What share of the air's pressure is water vapour?
 *
 * @param airC air temperature, C
 * @param relativeHumidityPercent relative humidity, percent
 * @returns partial pressure of water vapour, Pa
 *
 * Source: definition of relative humidity (ASHRAE Handbook of Fundamentals 2017, chapter 1, equation 12 solved for the
 * pressure). Valid range: that of the saturation pressure, 0 to 100 %; outside it a RangeError. Departures: none.
 * Example: 20 C and 50 % is 1169.4 Pa.
 */
export function vapourPressurePa(airC: number, relativeHumidityPercent: number): number {
  requireWithin('relativeHumidityPercent', relativeHumidityPercent, 0, 100, '%');
  return (saturationVapourPressurePa(airC) * relativeHumidityPercent) / 100;
}
