import { MINUTES_PER_DAY } from '../../climate/constants.ts';
import type { ClockShift } from '../clock-shift.ts';
import { isDate } from '../is-date.ts';
import { realMinute } from '../real-minute.ts';
import { dayNumber } from './day-number.ts';
import { readClockTime } from './read-clock-time.ts';

/** What a calendar needs to know of dates and clocks; made by whoever knows the time and the time zone. */
export interface CalendarDays {
  /** Date of day 0, YYYY-MM-DD. */
  readonly firstDate: string;
  /** Nothing new is planned before so many real minutes since midnight at the start of day 0. */
  readonly fromMinute: number;
  /** In order of time, over all days that a calendar may look ahead. */
  readonly clockShifts: readonly ClockShift[];
}

/** "2027-03-14T09:00", or with a space and any time that readClockTime reads. */
const MOMENT = /^(\d{4}-\d\d-\d\d)[T ]\s*(.+)$/;

/**
 * How many real minutes after midnight of day 0 is a moment that was typed?
 *
 * @param text "2027-03-14T09:00" in the project's time zone
 * @param days the calendar's days
 * @returns real minutes, below 0 before day 0; null when the text cannot be read
 *
 * Source: definition. Valid range: any text. Departures: see realMinute for the hour that clocks skip or show twice.
 * Example: day 0 is 2027-03-13, no clock is changed: "2027-03-14T09:00" is 1980.
 */
export function minuteOfMoment(text: string, days: CalendarDays): number | null {
  const [, date = '', time = ''] = MOMENT.exec(text.trim()) ?? [];
  const clock = isDate(date) ? readClockTime(time) : null;
  if (clock === null) return null;
  return realMinute(dayOfDate(date, days) * MINUTES_PER_DAY + clock, days.clockShifts);
}

/** The date at the beginning of a moment as typed; null when it cannot be read. */
export function dateOfMoment(text: string): string | null {
  const [, date = '', time = ''] = MOMENT.exec(text.trim()) ?? [];
  return isDate(date) && readClockTime(time) !== null ? date : null;
}

/** Days from day 0 to a date; below 0 before. */
export function dayOfDate(date: string, { firstDate }: Pick<CalendarDays, 'firstDate'>): number {
  return dayNumber(date) - dayNumber(firstDate);
}
