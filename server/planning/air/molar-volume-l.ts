import { GAS_CONSTANT_J_PER_MOL_K, STANDARD_PRESSURE_PA, ZERO_C_IN_KELVIN } from '../climate/constants.ts';
import { requireWithin } from '../climate/require-within.ts';
import { LITRES_PER_M3 } from './constants.ts';

/**
 * How many litres does one mole of vapour fill?
 *
 * @param airC air temperature, C
 * @returns litres per mole at 101 325 Pa
 *
 * Source: ideal gas law, exact for an ideal gas. Valid range: -40 to 100 C; outside it a RangeError. Departures: none.
 * Example: at 21.11 C (70 F), 24.146 L/mol.
 */
export function molarVolumeL(airC: number): number {
  requireWithin('airC', airC, -40, 100, 'C');
  return (LITRES_PER_M3 * GAS_CONSTANT_J_PER_MOL_K * (airC + ZERO_C_IN_KELVIN)) / STANDARD_PRESSURE_PA;
}
