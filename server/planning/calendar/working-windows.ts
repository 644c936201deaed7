import { MINUTES_PER_DAY } from '../climate/constants.ts';
import type { CalendarInput } from './calendar-input.ts';
import { DAYS_PER_WEEK } from './constants.ts';
import { realMinute } from './real-minute.ts';

/** A stretch of time, minutes since midnight of day 0: from `fromMinute` up to, not including, `toMinute`. */
export interface MinuteSpan {
  readonly fromMinute: number;
  readonly toMinute: number;
}

/**
 * When are there hands in the shop, from the start of the calendar to its end?
 *
 * @param input hours by weekday, days off, start and horizon
 * @returns spans in order, minutes since midnight of day 0; spans that touch are joined
 *
 * Source: definition. Valid range: windows within their day. Departures: overlapping windows of a day count once; hours
 * are clock times, so a window through a night on which clocks are changed is an hour shorter or longer.
 * Example: Monday 08:00-12:00 and 13:00-17:00, day 0 a Monday: 480-720 and 780-1020.
 */
export function workingWindows(
  input: Pick<
    CalendarInput,
    'firstWeekday' | 'clockShifts' | 'startMinute' | 'horizonDays' | 'hours' | 'daysOff'
  >,
): MinuteSpan[] {
  const off = new Set(input.daysOff);
  const realOf = (day: number, clockMin: number): number =>
    realMinute(day * MINUTES_PER_DAY + clockMin, input.clockShifts);
  const spans: { fromMinute: number; toMinute: number }[] = [];
  for (let day = 0; day < input.horizonDays; day++) {
    if (off.has(day)) continue;
    const windows = [...(input.hours[(input.firstWeekday + day) % DAYS_PER_WEEK] ?? [])];
    windows.sort((left, right) => left.fromMin - right.fromMin);
    for (const { fromMin, toMin } of windows) {
      const fromMinute = Math.max(realOf(day, fromMin), input.startMinute);
      const toMinute = realOf(day, toMin);
      if (fromMinute >= toMinute) continue;
      const last = spans.at(-1);
      if (last !== undefined && fromMinute <= last.toMinute)
        last.toMinute = Math.max(last.toMinute, toMinute);
      else spans.push({ fromMinute, toMinute });
    }
  }
  return spans;
}
