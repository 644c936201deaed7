import { requireWithin } from '../climate/require-within.ts';
import { MIXING_FACTOR_MAX, MIXING_FACTOR_MIN } from './constants.ts';

/**
 * How much fresh air would hold a steady emission at a limit, once the room has settled?
 *
 * @param emissionPerMin emission, U per minute
 * @param limitPerM3 limit, U per m3, above 0
 * @param mixingFactor 1 for perfect mixing, up to 10 for poor
 * @returns airflow, m3/min
 *
 * Source: Q = K G / C, the steady state of V dC/dt = G - (Q/K) C, University of Toledo industrial ventilation notes.
 * Valid range: as above; else a RangeError. Departures: none. With the highest emission of a fading coat it is always at
 * least as much as the exact answer, and far more for a small quick coat in a large room.
 * Example: 1000 mg/min against 350 mg/m3 with K = 2: 5.714 m3/min.
 */
export function steadyStateAirflowM3PerMin(
  emissionPerMin: number,
  limitPerM3: number,
  mixingFactor: number,
): number {
  requireWithin('emissionPerMin', emissionPerMin, 0, Infinity, 'per minute');
  requireWithin('limitPerM3', limitPerM3, Number.MIN_VALUE, Infinity, 'per m3');
  requireWithin('mixingFactor', mixingFactor, MIXING_FACTOR_MIN, MIXING_FACTOR_MAX, '');
  return (mixingFactor * emissionPerMin) / limitPerM3;
}
