import type { UnitSystem } from '../../server/planning/project-input.ts';
import { readInUnit } from './read-in-unit.ts';
import type { Reading } from './reading.ts';

/** Cubic metres per hour in one cubic foot per minute. Exact: 60 x 0.3048 cubed. */
const M3_PER_HOUR_PER_CFM = 1.69901079552;
/** Stronger than any fan; the server takes no more. */
const MOST_M3_PER_HOUR = 1_000_000;

/** How many cubic metres per hour are typed? A bare number is in the project's unit, m³/h or cfm. */
export function readAirflow(typed: string, units: UnitSystem): Reading<number | null> {
  return readInUnit(
    typed,
    { 'm³/h': 1, 'm3/h': 1, cfm: M3_PER_HOUR_PER_CFM },
    units === 'metric' ? 'm³/h' : 'cfm',
    { least: 0, most: MOST_M3_PER_HOUR },
  );
}
