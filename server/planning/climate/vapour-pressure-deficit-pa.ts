import { requireWithin } from './require-within.ts';
import { saturationVapourPressurePa } from './saturation-vapour-pressure-pa.ts';

/**
 * How hard does the air pull water out of a wet coat: how far is it from saturated?
 *
 * @param airC air temperature, C
 * @param relativeHumidityPercent relative humidity, percent
 * @returns saturation pressure minus vapour pressure, Pa; 0 in saturated air
 *
 * Source: definition of the vapour-pressure deficit. Valid range: that of the saturation pressure, 0 to 100 %; outside
 * it a RangeError. Departures: none. The surface is taken to be as warm as the air.
 * Example: 22 C and 50 % is 1322.4 Pa.
 */
export function vapourPressureDeficitPa(airC: number, relativeHumidityPercent: number): number {
  requireWithin('relativeHumidityPercent', relativeHumidityPercent, 0, 100, '%');
  return (saturationVapourPressurePa(airC) * (100 - relativeHumidityPercent)) / 100;
}
