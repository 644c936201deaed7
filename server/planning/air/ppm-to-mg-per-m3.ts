import { requireWithin } from '../climate/require-within.ts';
import { LIMIT_MOLAR_VOLUME_L, PPM_PER_UNIT } from './constants.ts';

/**
 * What is an exposure limit in parts per million worth in milligrams per cubic metre?
 *
 * @param ppm parts per million by volume
 * @param molarMassGPerMol molar mass of the vapour, g/mol
 * @returns mg/m3
 *
 * Source: mg/m3 = ppm x molar mass / 24.45, OSHA Table Z-1 footnotes and NIOSH Pocket Guide. Valid range: 0 to 1 000 000
 * ppm, molar mass 1 to 1000; outside it a RangeError. Departures: none.
 * Example: toluene, 100 ppm: 100 x 92.1 / 24.45 = 376.7 mg/m3 (printed as 375).
 */
export function ppmToMgPerM3(ppm: number, molarMassGPerMol: number): number {
  requireWithin('ppm', ppm, 0, PPM_PER_UNIT, 'ppm');
  requireWithin('molarMassGPerMol', molarMassGPerMol, 1, 1000, 'g/mol');
  return (ppm * molarMassGPerMol) / LIMIT_MOLAR_VOLUME_L;
}
