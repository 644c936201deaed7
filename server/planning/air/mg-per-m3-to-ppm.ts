import { requireWithin } from '../climate/require-within.ts';
import { LIMIT_MOLAR_VOLUME_L } from './constants.ts';

/**
 * What is a concentration in milligrams per cubic metre worth in parts per million?
 *
 * @param mgPerM3 milligrams per cubic metre, from 0
 * @param molarMassGPerMol molar mass of the vapour, g/mol
 * @returns ppm by volume
 *
 * Source: the inverse of ppmToMgPerM3 and its source. Valid range: molar mass 1 to 1000; else a RangeError.
 * Departures: none.
 * Example: mineral spirits, 350 mg/m3 at 144 g/mol: 59.4 ppm.
 */
export function mgPerM3ToPpm(mgPerM3: number, molarMassGPerMol: number): number {
  requireWithin('mgPerM3', mgPerM3, 0, Infinity, 'mg/m3');
  requireWithin('molarMassGPerMol', molarMassGPerMol, 1, 1000, 'g/mol');
  return (mgPerM3 * LIMIT_MOLAR_VOLUME_L) / molarMassGPerMol;
}
