import { requireWithin } from '../climate/require-within.ts';
import { LITRES_PER_M3, MIXING_FACTOR_MAX, MIXING_FACTOR_MIN, PPM_PER_UNIT } from './constants.ts';
import { molarVolumeL } from './molar-volume-l.ts';

/** A steady evaporation and the limit it must stay under. */
export interface SteadyVapour {
  readonly gramsPerMin: number;
  readonly molarMassGPerMol: number;
  readonly limitPpm: number;
  /** 1 is perfect mixing, 10 is poor. */
  readonly mixingFactor: number;
  readonly airC: number;
}

/**
 * How much fresh air keeps a steadily evaporating solvent at its exposure limit?
 *
 * @param vapour grams per minute, molar mass g/mol, limit ppm, mixing factor, air temperature C
 * @returns airflow, m3/min
 *
 * Source: moles of vapour per minute x molar volume x K x 1 000 000 / ppm: the SI form on the ABIH equation sheet (its
 * constant 24 L/mol from memory), worked in Abulencia and Theodore, Fluid Flow for the Practicing Chemical Engineer,
 * example 20.2. Valid range: limit above 0 ppm, mixing factor 1 to 10; else a RangeError. Departures: the molar volume is
 * taken at the air's temperature instead of 24.
 * Example: toluene, 8.24 g/min, 92 g/mol, 80 ppm, K = 5, 20 C: 134.7 m3/min.
 */
export function healthAirflowM3PerMin(vapour: SteadyVapour): number {
  requireWithin('gramsPerMin', vapour.gramsPerMin, 0, Infinity, 'g/min');
  requireWithin('molarMassGPerMol', vapour.molarMassGPerMol, 1, 1000, 'g/mol');
  requireWithin('limitPpm', vapour.limitPpm, Number.MIN_VALUE, PPM_PER_UNIT, 'ppm');
  requireWithin('mixingFactor', vapour.mixingFactor, MIXING_FACTOR_MIN, MIXING_FACTOR_MAX, '');
  const vapourLPerMin = (vapour.gramsPerMin / vapour.molarMassGPerMol) * molarVolumeL(vapour.airC);
  return (vapourLPerMin * vapour.mixingFactor * PPM_PER_UNIT) / (vapour.limitPpm * LITRES_PER_M3);
}
