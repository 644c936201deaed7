import { requireWithin } from '../climate/require-within.ts';
import { type AirRoom, exchangePerMin, type RoomSource } from './air-room.ts';
import { AVERAGE_TOLERANCE } from './constants.ts';
import { doseOf, inAirOf, laidPhases } from './room-kernel.ts';
import { roomPeaks } from './room-peak.ts';

export interface HighestAverage {
  /** Highest average over the window, U/m3. */
  readonly value: number;
  /** End of the window that has it; null in a closed room, where it is approached for ever. */
  readonly endMinute: number | null;
}

/**
 * What is the highest average over any window of a given length: the 15-minute or 8-hour figure of exposure limits?
 *
 * Method: branch and bound over the end of the window (Piyavskii's method with local slopes, from memory). The average
 * climbs at (C(end) - C(end - window)) / window. Cut at every coat and every top, and one window after each, both C's
 * only rise or only fall between neighbouring cuts, so their values at the cuts bound the slope, and with it the average
 * in between; an interval that cannot beat the best end found by more than the tolerance is dropped.
 *
 * @param room volume m3, airflow m3/min, mixing factor
 * @param sources coats, amounts in U
 * @param windowMin length of the window, minutes, above 0
 * @returns the highest average found and the end of its window; no average is more than one part in 100 000 higher
 *
 * Source: definition of the time-weighted average (29 CFR 1910.1000(d), from memory). Valid range: as roomConcentration.
 * Departures: the window may lie anywhere, not only on a shift, and hours without vapour before the first coat count.
 * Example: a lone coat whose vapour is gone within the window: the whole dose divided by the window.
 */
export function highestAverage(
  room: AirRoom,
  sources: readonly RoomSource[],
  windowMin: number,
): HighestAverage {
  requireWithin('windowMin', windowMin, Number.MIN_VALUE, Infinity, 'min');
  const tops = roomPeaks(room, sources);
  const last = tops.at(-1);
  if (last === undefined) return { value: 0, endMinute: 0 };
  if (last.minute === null) return { value: last.value, endMinute: null };

  const exchange = exchangePerMin(room);
  const phases = laidPhases(sources);
  const sample = (at: number): Sample => {
    const dose = doseOf(phases, exchange, at) - doseOf(phases, exchange, at - windowMin);
    return {
      at,
      average: dose / (windowMin * room.volumeM3),
      atEnd: inAirOf(phases, exchange, at) / room.volumeM3,
      atStart: inAirOf(phases, exchange, at - windowMin) / room.volumeM3,
    };
  };

  // After the last top plus one window both C's only fall, and the average with them.
  const turns = [
    ...sources.map((source) => source.startMinute),
    ...tops.flatMap(({ minute }) => minute ?? []),
  ];
  const cuts = new Set(turns.flatMap((turn) => [turn, turn + windowMin]));
  const samples = [...cuts].sort((one, other) => one - other).map(sample);
  let best = samples.reduce((most, one) => (one.average > most.average ? one : most));
  const open = samples.slice(1).map((high, index): [Sample, Sample] => [samples[index] ?? high, high]);
  for (let pair = open.pop(); pair !== undefined; pair = open.pop()) {
    const [low, high] = pair;
    if (mostBetween(low, high, windowMin) <= best.average * (1 + AVERAGE_TOLERANCE)) continue;
    const at = low.at + (high.at - low.at) / 2;
    if (!(at > low.at && at < high.at)) continue;
    const middle = sample(at);
    if (middle.average > best.average) best = middle;
    open.push([low, middle], [middle, high]);
  }
  return { value: best.average, endMinute: best.at };
}

/** A window that ends at `at`: its average, and the concentration at its end and at its beginning. */
interface Sample {
  readonly at: number;
  readonly average: number;
  readonly atEnd: number;
  readonly atStart: number;
}

/** Most the average can be between two samples: up from the left at the steepest climb, back down to the right. */
function mostBetween(low: Sample, high: Sample, windowMin: number): number {
  const climb = (Math.max(low.atEnd, high.atEnd) - Math.min(low.atStart, high.atStart)) / windowMin;
  const fall = (Math.min(low.atEnd, high.atEnd) - Math.max(low.atStart, high.atStart)) / windowMin;
  if (climb <= 0 || fall >= 0) return Math.max(low.average, high.average);
  const width = high.at - low.at;
  const across = (high.average - low.average - fall * width) / (climb - fall);
  return low.average + climb * Math.min(Math.max(across, 0), width);
}
