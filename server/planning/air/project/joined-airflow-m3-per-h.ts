import { requireWithin } from '../../climate/require-within.ts';

/**
 * How much fresh air do a fan and an opening bring together?
 *
 * @param oneM3PerH one airflow, m3/h
 * @param otherM3PerH the other, m3/h
 * @returns m3/h
 *
 * Source: flows of an unbalanced fan and of the wind add up in quadrature, ASHRAE Handbook of Fundamentals, chapter on
 * ventilation and infiltration, from memory. Valid range: from 0; else a RangeError. Departures: none.
 * Example: 300 and 400 m3/h: 500.
 */
export function joinedAirflowM3PerH(oneM3PerH: number, otherM3PerH: number): number {
  requireWithin('oneM3PerH', oneM3PerH, 0, Infinity, 'm3/h');
  requireWithin('otherM3PerH', otherM3PerH, 0, Infinity, 'm3/h');
  return Math.hypot(oneM3PerH, otherM3PerH);
}
