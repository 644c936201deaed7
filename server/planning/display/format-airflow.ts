import { UNKNOWN_TEXT } from './constants.ts';
import { trimmedText } from './fixed-text.ts';

/** Cubic feet per minute in one cubic metre per hour. Exact: 1 / (60 x 0.3048 cubed). */
const CFM_PER_M3_PER_HOUR = 1 / (60 * 0.028316846592);

/**
 * How is an airflow printed?
 *
 * @param m3PerHour airflow, m3/h; null when not known
 * @param units metric prints m³/h, us prints cfm
 * @returns rounded up to whole units, so that a need is never understated
 *
 * Source: definition of the foot. Valid range: any. Departures: none. Example: 540 is "540 m³/h", or "318 cfm".
 */
export function formatAirflow(m3PerHour: number | null, units: 'metric' | 'us'): string {
  if (m3PerHour === null) return UNKNOWN_TEXT;
  const value = units === 'metric' ? m3PerHour : m3PerHour * CFM_PER_M3_PER_HOUR;
  return `${trimmedText(Math.ceil(value - 1e-6), 0)} ${units === 'metric' ? 'm³/h' : 'cfm'}`;
}
