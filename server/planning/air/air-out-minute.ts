import { requireWithin } from '../climate/require-within.ts';
import type { AirRoom, RoomSource } from './air-room.ts';
import { roomConcentration } from './room-concentration.ts';
import { roomPeaks } from './room-peak.ts';
import { zeroBetween } from './zero-between.ts';

/**
 * From when on, after the last coat, does the air stay under a level for good?
 *
 * @param room volume m3, airflow m3/min, mixing factor
 * @param sources coats, amounts in U; at least one
 * @param level the level, U/m3, above 0
 * @returns minute, not before the last coat's start; null when a closed room never comes under it
 *
 * Source: root of the closed solution in roomConcentration on its falling side. After the last coat there is
 * one top at most (roomPeaks), so once under the level on the way down, the air stays under. Valid range: level above 0;
 * else a RangeError. Departures: none.
 * Example: 100 mg at once in 10 m3, one air change per hour, level 1 mg/m3: 60 ln 10 = 138 min.
 */
export function airOutMinute(room: AirRoom, sources: readonly RoomSource[], level: number): number | null {
  requireWithin('level', level, Number.MIN_VALUE, Infinity, 'per m3');
  const top = roomPeaks(room, sources).at(-1);
  if (top === undefined) throw new RangeError('sources must hold at least one coat, got none');
  const lastStart = Math.max(...sources.map((source) => source.startMinute));
  if (top.value <= level) return lastStart;
  if (top.minute === null || room.airflowM3PerMin === 0) return null;
  const above = (minute: number) => roomConcentration(room, sources, minute) - level;
  let low = top.minute;
  let high = low + 1;
  for (; above(high) > 0; high += high - top.minute) low = high;
  return zeroBetween(above, low, high);
}
