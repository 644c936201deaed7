import { requireWithin } from '../../climate/require-within.ts';
import { SECONDS_PER_HOUR } from '../constants.ts';

/** Share of the wind's flow through a single opening that changes the air. Source: BS 5925:1991, from memory. */
const SINGLE_SIDED_SHARE = 0.025;

/**
 * How much fresh air comes through one open window or door?
 *
 * @param areaM2 free area of the opening, m2
 * @param windMPerS wind outside, m/s
 * @returns m3/h
 *
 * Source: Q = 0.025 A u, single-sided ventilation by wind, BS 5925:1991, from memory. Valid range: from 0; else a
 * RangeError. Departures: draught by warmth and through a second opening is left out; both bring more air. Rough: the
 * true flow may be several times more or less. Example: a door of 1.6 m2 in 1 m/s: 144 m3/h.
 */
export function openingAirflowM3PerH(areaM2: number, windMPerS: number): number {
  requireWithin('areaM2', areaM2, 0, Infinity, 'm2');
  requireWithin('windMPerS', windMPerS, 0, Infinity, 'm/s');
  return SINGLE_SIDED_SHARE * areaM2 * windMPerS * SECONDS_PER_HOUR;
}
