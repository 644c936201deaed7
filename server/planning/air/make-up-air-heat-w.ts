import { STANDARD_PRESSURE_PA, ZERO_C_IN_KELVIN } from '../climate/constants.ts';
import { requireWithin } from '../climate/require-within.ts';
import { DRY_AIR_HEAT_J_PER_KG_K, DRY_AIR_J_PER_KG_K, SECONDS_PER_MINUTE } from './constants.ts';

/**
 * How much heat does it take to warm the fresh air that replaces what a fan blows out?
 *
 * @param airflowM3PerMin airflow, m3/min of room air, from 0
 * @param indoorC shop temperature, C
 * @param outdoorC outdoor temperature, C
 * @returns watts; below 0 when it is warmer outside
 *
 * Source: density x specific heat x airflow x temperature difference, with dry air at 101 325 Pa and the constants of
 * ASHRAE Handbook of Fundamentals 2017, chapter 1. Valid range: -60 to 60 C; else a RangeError. Departures: moisture in
 * the air is left out, 1 to 2 percent.
 * Example: 10 m3/min, 20 C in and 0 C out: 1.2041 x 1006 x 10 / 60 x 20 = 4038 W.
 */
export function makeUpAirHeatW(airflowM3PerMin: number, indoorC: number, outdoorC: number): number {
  requireWithin('airflowM3PerMin', airflowM3PerMin, 0, Infinity, 'm3/min');
  requireWithin('indoorC', indoorC, -60, 60, 'C');
  requireWithin('outdoorC', outdoorC, -60, 60, 'C');
  const kgPerM3 = STANDARD_PRESSURE_PA / (DRY_AIR_J_PER_KG_K * (indoorC + ZERO_C_IN_KELVIN));
  const wattsPerC = (kgPerM3 * DRY_AIR_HEAT_J_PER_KG_K * airflowM3PerMin) / SECONDS_PER_MINUTE;
  const watts = wattsPerC * (indoorC - outdoorC);
  return watts === 0 ? 0 : watts;
}
