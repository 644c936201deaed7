import { requireWithin } from '../climate/require-within.ts';
import type { AirRoom, RoomSource } from './air-room.ts';
import { AIRFLOW_TOLERANCE } from './constants.ts';
import { highestAverage } from './highest-average.ts';
import { highestEmissionPerMin } from './highest-emission-per-min.ts';
import { leastAirflow } from './least-airflow.ts';
import { roomPeak } from './room-peak.ts';
import { steadyStateAirflowM3PerMin } from './steady-state-airflow-m3-per-min.ts';

/**
 * How much fresh air does this room need, so that its peak or its highest average stays under a limit?
 *
 * @param room volume m3 and mixing factor
 * @param sources coats, amounts in U
 * @param limitPerM3 what must not be reached, U/m3, above 0
 * @param windowMin `peak`, or the length of the averaging window, minutes
 * @returns airflow, m3/min; 0 when even a closed room stays under
 *
 * Source: bisection (leastAirflow) on the exact solution (roomPeak, highestAverage); more air never raises either. The
 * search starts from the steady-state airflow at the highest emission, which is always enough. Valid range: theirs.
 * Departures: none.
 * Example: one coat of 5000 mg at 0.4 per hour in 30 m3, limit 54.61 mg/m3: 15 m3/h, the airflow of roomConcentration.
 */
export function neededAirflowM3PerMin(
  room: Omit<AirRoom, 'airflowM3PerMin'>,
  sources: readonly RoomSource[],
  limitPerM3: number,
  windowMin: number | 'peak',
): number {
  requireWithin('limitPerM3', limitPerM3, Number.MIN_VALUE, Infinity, 'per m3');
  const measure = (airflowM3PerMin: number): number =>
    windowMin === 'peak'
      ? roomPeak({ ...room, airflowM3PerMin }, sources).value
      : highestAverage({ ...room, airflowM3PerMin }, sources, windowMin).value;
  const steady = steadyStateAirflowM3PerMin(highestEmissionPerMin(sources), limitPerM3, room.mixingFactor);
  return leastAirflow(measure, limitPerM3, steady * (1 + AIRFLOW_TOLERANCE));
}
