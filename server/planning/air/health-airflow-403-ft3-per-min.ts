import { requireWithin } from '../climate/require-within.ts';
import { DILUTION_403, MIXING_FACTOR_MAX, MIXING_FACTOR_MIN, PPM_PER_UNIT } from './constants.ts';

/** The same question in the units of the US equation. */
export interface SteadyVapourUs {
  readonly pintsPerMin: number;
  /** Specific gravity of the liquid. */
  readonly specificGravity: number;
  readonly molarMassGPerMol: number;
  readonly limitPpm: number;
  readonly mixingFactor: number;
}

/**
 * How much fresh air keeps a steadily evaporating solvent at its exposure limit, by the US equation?
 *
 * @param vapour pints per minute, specific gravity, molar mass g/mol, limit ppm, mixing factor
 * @returns airflow, ft3/min
 *
 * Source: Q = 403 x 10^6 x SG x ER x K / (MW x C), University of Toledo industrial ventilation notes. Valid range: limit
 * above 0 ppm, mixing factor 1 to 10; else a RangeError. Departures: none. 403 is a 70 F figure.
 * Example: toluene, 0.02 pint/min, SG 0.87, MW 92, 80 ppm, K = 5: 4764 ft3/min.
 */
export function healthAirflow403Ft3PerMin(vapour: SteadyVapourUs): number {
  requireWithin('pintsPerMin', vapour.pintsPerMin, 0, Infinity, 'pint/min');
  requireWithin('specificGravity', vapour.specificGravity, 0.5, 2, '');
  requireWithin('molarMassGPerMol', vapour.molarMassGPerMol, 1, 1000, 'g/mol');
  requireWithin('limitPpm', vapour.limitPpm, Number.MIN_VALUE, PPM_PER_UNIT, 'ppm');
  requireWithin('mixingFactor', vapour.mixingFactor, MIXING_FACTOR_MIN, MIXING_FACTOR_MAX, '');
  const perMin = DILUTION_403 * vapour.specificGravity * vapour.pintsPerMin * vapour.mixingFactor;
  return (perMin * PPM_PER_UNIT) / (vapour.molarMassGPerMol * vapour.limitPpm);
}
