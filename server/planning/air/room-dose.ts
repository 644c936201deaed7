import { type AirRoom, exchangePerMin, type RoomSource, requireSources } from './air-room.ts';
import { doseOf, laidPhases } from './room-kernel.ts';

/**
 * How much exposure has gathered up to a minute: the area under the concentration?
 *
 * @param room volume m3, airflow m3/min, mixing factor
 * @param sources coats, amounts in U
 * @param minute the end of the time; the time begins before the first coat
 * @returns integral of roomConcentration, U min/m3
 *
 * Source: integral of the closed solution in roomConcentration; algebra of ours: for each phase (M k / V) t^2 times the
 * second divided difference of the exponential at 0, -kt and -Nt. Valid range: as roomConcentration. Departures: none.
 * Example: 100 mg at 0.01 per minute in a closed room of 10 m3, after 100 min: 10 x (100 - 63.21) = 367.9 mg min/m3.
 */
export function roomDose(room: AirRoom, sources: readonly RoomSource[], minute: number): number {
  const exchange = exchangePerMin(room);
  return doseOf(laidPhases(requireSources(sources)), exchange, minute) / room.volumeM3;
}
