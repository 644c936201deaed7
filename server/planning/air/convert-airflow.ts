import { requireWithin } from '../climate/require-within.ts';
import { M3_PER_FT3, MINUTES_PER_HOUR } from './constants.ts';

/**
 * What airflow are so many air changes per hour?
 *
 * @param airChangesPerHour air changes per hour, from 0
 * @param volumeM3 room volume, m3, above 0
 * @returns m3/min
 *
 * Source: definition of the air change, exact. Valid range: as above; else a RangeError. Departures: none.
 * Example: 6 per hour in 50 m3 is 5 m3/min.
 */
export function airChangesToM3PerMin(airChangesPerHour: number, volumeM3: number): number {
  requireWithin('airChangesPerHour', airChangesPerHour, 0, Infinity, 'per hour');
  requireWithin('volumeM3', volumeM3, Number.MIN_VALUE, Infinity, 'm3');
  return (airChangesPerHour * volumeM3) / MINUTES_PER_HOUR;
}

/**
 * How many air changes per hour is an airflow?
 *
 * @param airflowM3PerMin airflow, m3/min, from 0
 * @param volumeM3 room volume, m3, above 0
 * @returns air changes per hour
 *
 * Source: definition of the air change, exact. Valid range: as above; else a RangeError. Departures: none.
 * Example: 5 m3/min in 50 m3 is 6 per hour.
 */
export function m3PerMinToAirChanges(airflowM3PerMin: number, volumeM3: number): number {
  requireWithin('airflowM3PerMin', airflowM3PerMin, 0, Infinity, 'm3/min');
  requireWithin('volumeM3', volumeM3, Number.MIN_VALUE, Infinity, 'm3');
  return (airflowM3PerMin * MINUTES_PER_HOUR) / volumeM3;
}

/**
 * What is a fan's rating in cubic feet per minute worth in cubic metres?
 *
 * @param ft3PerMin airflow, ft3/min (cfm), from 0
 * @returns m3/min
 *
 * Source: definition of the foot, exact. Valid range: from 0; else a RangeError. Departures: none.
 * Example: 100 ft3/min is 2.8317 m3/min.
 */
export function ft3PerMinToM3PerMin(ft3PerMin: number): number {
  return requireWithin('ft3PerMin', ft3PerMin, 0, Infinity, 'ft3/min') * M3_PER_FT3;
}

/**
 * What is an airflow worth in cubic feet per minute?
 *
 * @param airflowM3PerMin airflow, m3/min, from 0
 * @returns ft3/min (cfm)
 *
 * Source: definition of the foot, exact. Valid range: from 0; else a RangeError. Departures: none.
 * Example: 2.8317 m3/min is 100 ft3/min.
 */
export function m3PerMinToFt3PerMin(airflowM3PerMin: number): number {
  return requireWithin('airflowM3PerMin', airflowM3PerMin, 0, Infinity, 'm3/min') / M3_PER_FT3;
}
