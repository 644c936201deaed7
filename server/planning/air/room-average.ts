import { requireWithin } from '../climate/require-within.ts';
import type { AirRoom, RoomSource } from './air-room.ts';
import { roomDose } from './room-dose.ts';

/**
 * What is the average concentration over a stretch of time?
 *
 * @param room volume m3, airflow m3/min, mixing factor
 * @param sources coats, amounts in U
 * @param fromMinute start of the stretch
 * @param toMinute end of the stretch, after its start
 * @returns average, U/m3
 *
 * Source: definition of the time-weighted average (29 CFR 1910.1000(d), from memory), by roomDose, exact. Valid range:
 * toMinute above fromMinute; else a RangeError. Departures: none.
 * Example: the closed room of roomDose over its first 100 min: 3.679 mg/m3.
 */
export function roomAverage(
  room: AirRoom,
  sources: readonly RoomSource[],
  fromMinute: number,
  toMinute: number,
): number {
  const minutes = requireWithin(
    'toMinute - fromMinute',
    toMinute - fromMinute,
    Number.MIN_VALUE,
    Infinity,
    'min',
  );
  return (roomDose(room, sources, toMinute) - roomDose(room, sources, fromMinute)) / minutes;
}
