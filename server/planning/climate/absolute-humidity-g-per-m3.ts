import { GAS_CONSTANT_J_PER_MOL_K, WATER_G_PER_MOL, ZERO_C_IN_KELVIN } from './constants.ts';
import { vapourPressurePa } from './vapour-pressure-pa.ts';

/**
 * How many grams of water are in a cubic metre of this air?
 *
 * @param airC air temperature, C
 * @param relativeHumidityPercent relative humidity, percent
 * @returns water vapour, g/m3 of moist air
 *
 * Source: ideal gas law, exact for an ideal gas; molar mass of water from ASHRAE Handbook of Fundamentals 2017, chapter
 * 1 (from memory). Valid range: -100 to 200 C, 0 to 100 %; outside it a RangeError. Departures: real vapour differs by
 * up to 0.5 % at shop temperatures.
 * Example: 20 C and 50 % is 8.64 g/m3.
 */
export function absoluteHumidityGPerM3(airC: number, relativeHumidityPercent: number): number {
  const pressurePa = vapourPressurePa(airC, relativeHumidityPercent);
  return (WATER_G_PER_MOL * pressurePa) / (GAS_CONSTANT_J_PER_MOL_K * (airC + ZERO_C_IN_KELVIN));
}
