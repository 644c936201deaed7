import { DAYS_PER_WEEK } from '../constants.ts';
import { isDate } from '../is-date.ts';

const MS_PER_DAY = 86_400_000;
/** 1 January 1970 was a Thursday: 3 with Monday as 0. */
const WEEKDAY_OF_DAY_0 = 3;

/**
 * Which day is a date, counted from 1 January 1970?
 *
 * @param date YYYY-MM-DD, as isDate accepts it
 * @returns whole days; below 0 before 1970
 *
 * Source: definition, Gregorian calendar. Valid range: see isDate; else a RangeError. Departures: none.
 * Example: 1970-01-03 is day 2.
 */
export function dayNumber(date: string): number {
  if (!isDate(date)) throw new RangeError(`date must be a day as 2027-03-14, got ${date}`);
  return Date.parse(`${date}T00:00:00Z`) / MS_PER_DAY;
}

/** The date of a day counted from 1 January 1970, YYYY-MM-DD. */
export function dateOfDay(day: number): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 'YYYY-MM-DD'.length);
}

/** The weekday of a day counted from 1 January 1970: 0 is Monday, 6 is Sunday. */
export function weekdayOfDay(day: number): number {
  return (((day + WEEKDAY_OF_DAY_0) % DAYS_PER_WEEK) + DAYS_PER_WEEK) % DAYS_PER_WEEK;
}
