import { requireWithin } from '../../climate/require-within.ts';
import { SECONDS_PER_HOUR } from '../constants.ts';

/** Share of the wind that passes through when it blows at a slant. Source: ASHRAE Handbook of Fundamentals, from memory. */
const EFFECTIVENESS = 0.25;

/**
 * How much fresh air blows through a room with openings on two sides?
 *
 * @param areaM2 free area of the smaller opening, m2
 * @param windMPerS wind outside, m/s
 * @returns m3/h
 *
 * Source: Q = Cv A u with Cv 0.25 to 0.35 for slanting wind, ASHRAE Handbook of Fundamentals, chapter on ventilation and
 * infiltration, from memory; the low end is taken. Valid range: from 0; else a RangeError. Departures: rough, and nothing
 * on a still day. Example: a window of 0.5 m2 in 1 m/s: 450 m3/h.
 */
export function crossDraughtM3PerH(areaM2: number, windMPerS: number): number {
  requireWithin('areaM2', areaM2, 0, Infinity, 'm2');
  requireWithin('windMPerS', windMPerS, 0, Infinity, 'm/s');
  return EFFECTIVENESS * areaM2 * windMPerS * SECONDS_PER_HOUR;
}
