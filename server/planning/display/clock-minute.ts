import type { ClockShift } from '../calendar/clock-shift.ts';

/**
 * What does the clock on the wall show after so many minutes?
 *
 * @param minute real minutes gone by since midnight at the start of day 0
 * @param shifts when clocks are changed, in order of time; empty when they are not
 * @returns clock minutes since midnight of day 0, of 1440 to the calendar day: 1980 is 09:00 on day 1
 *
 * Source: definition. Valid range: any. Departures: none.
 * Example: clocks put forward an hour at minute 1560 (02:00 on day 1): minute 1560 reads 1620, which is 03:00.
 */
export function clockMinute(minute: number, shifts: readonly ClockShift[]): number {
  return minute + (shifts.findLast(({ fromMinute }) => fromMinute <= minute)?.aheadMin ?? 0);
}
