import { dateOfDay, dayNumber, weekdayOfDay } from '../../calendar/project/day-number.ts';
import { LONGEST_CLOSED_DAYS } from '../constants.ts';

/** When orders are worked on and delivered. */
export interface SupplierDays {
  /** 0 is Monday, 6 is Sunday. */
  readonly workingDays: readonly number[];
  /** Holidays and other days off of the project, YYYY-MM-DD: nobody orders or takes in goods on them. */
  readonly daysOff: ReadonlySet<string>;
}

/**
 * Which working day of a supplier is so many working days before or after a date?
 *
 * @param date YYYY-MM-DD
 * @param steps whole working days; below 0 goes back
 * @returns with 0 steps the date itself, or where nobody works on it the nearest working day in the direction asked for;
 *   with more, so many working days further; `skipped` are the days between that did not count. Null when the supplier
 *   has no working day within LONGEST_CLOSED_DAYS, or the date would fall before 1970.
 *
 * Source: definition. Valid range: any date. Departures: none.
 * Example: Monday less 2 working days, Monday to Friday: Thursday; Saturday and Sunday are skipped.
 */
export function workingDayFrom(
  date: string,
  steps: number,
  direction: 'back' | 'on',
  { workingDays, daysOff }: SupplierDays,
): { readonly date: string; readonly skipped: readonly string[] } | null {
  if (!(Number.isInteger(steps) && steps >= 0))
    throw new RangeError(`workingDayFrom: steps must be a whole number of days of at least 0, got ${steps}`);
  const way = direction === 'back' ? -1 : 1;
  const isWorking = (day: number): boolean =>
    workingDays.includes(weekdayOfDay(day)) && !daysOff.has(dateOfDay(day));
  const skipped: string[] = [];
  let day = dayNumber(date);
  let closed = 0;
  let left = steps;
  while (!isWorking(day) || left > 0) {
    if (isWorking(day)) {
      left--;
      closed = 0;
    } else {
      skipped.push(dateOfDay(day));
      if (++closed > LONGEST_CLOSED_DAYS) return null;
    }
    day += way;
    if (day < 0) return null;
  }
  return { date: dateOfDay(day), skipped };
}
