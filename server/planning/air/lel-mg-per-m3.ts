import { requireWithin } from '../climate/require-within.ts';
import { LITRES_PER_M3, MG_PER_G } from './constants.ts';
import { molarVolumeL } from './molar-volume-l.ts';

/**
 * How many milligrams of vapour in a cubic metre make the lower explosive limit?
 *
 * @param lelPercent lower explosive limit, percent by volume
 * @param molarMassGPerMol molar mass of the vapour, g/mol
 * @param airC air temperature, C
 * @returns mg/m3 of vapour at the limit
 *
 * Source: ideal gas law. Valid range: LEL above 0 to 100 %, molar mass 1 to 1000; else a RangeError. Departures: the
 * limit itself is taken as the same at every shop temperature (it falls slightly as the air warms).
 * Example: mineral spirits at 0.7 % and 144 g/mol, 20 C: 41 900 mg/m3.
 */
export function lelMgPerM3(lelPercent: number, molarMassGPerMol: number, airC: number): number {
  requireWithin('lelPercent', lelPercent, Number.MIN_VALUE, 100, '% by volume');
  requireWithin('molarMassGPerMol', molarMassGPerMol, 1, 1000, 'g/mol');
  return ((lelPercent / 100) * LITRES_PER_M3 * MG_PER_G * molarMassGPerMol) / molarVolumeL(airC);
}
