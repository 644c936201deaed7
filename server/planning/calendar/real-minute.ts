import type { ClockShift } from './clock-shift.ts';

/**
 * How many real minutes have gone by when the clock on the wall shows a time?
 *
 * @param clock clock minutes since midnight of day 0, of 1440 to the calendar day
 * @param shifts when clocks are changed, in order of time; empty when they are not
 * @returns real minutes since midnight at the start of day 0
 *
 * Source: definition. Valid range: any. Departures: a time that the clock skips in spring stands for the moment of the
 * change; of a time it shows twice in autumn the first is meant. Both are rules of ours.
 * Example: clocks put forward an hour at minute 1560 (02:00 on day 1): 09:00 on day 1, 1980, is minute 1920.
 */
export function realMinute(clock: number, shifts: readonly ClockShift[]): number {
  let ahead = 0;
  for (const { fromMinute, aheadMin } of shifts) {
    if (clock - ahead < fromMinute) break;
    if (clock - aheadMin < fromMinute) return fromMinute;
    ahead = aheadMin;
  }
  return clock - ahead;
}
