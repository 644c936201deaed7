import { requireWithin } from '../climate/require-within.ts';
import { molarVolumeL } from './molar-volume-l.ts';

/**
 * How many litres of pure vapour does a liquid make when all of it evaporates?
 *
 * @param litres litres of liquid solvent
 * @param densityGPerL density of the liquid, g/L
 * @param molarMassGPerMol molar mass, g/mol
 * @param airC air temperature, C
 * @returns litres of vapour at 101 325 Pa
 *
 * Source: ideal gas law with the liquid's mass. Valid range: density 500 to 2000 g/L, molar mass 1 to 1000; else a
 * RangeError. Departures: none; a mixture like mineral spirits has no one molar mass, so its figure is only as good as
 * the mass given.
 * Example: 1 L of toluene (870 g/L, 92.14 g/mol) at 21.11 C: 228.0 L.
 */
export function vapourVolumeL(
  litres: number,
  densityGPerL: number,
  molarMassGPerMol: number,
  airC: number,
): number {
  requireWithin('litres', litres, 0, Infinity, 'L');
  requireWithin('densityGPerL', densityGPerL, 500, 2000, 'g/L');
  requireWithin('molarMassGPerMol', molarMassGPerMol, 1, 1000, 'g/mol');
  return ((litres * densityGPerL) / molarMassGPerMol) * molarVolumeL(airC);
}
