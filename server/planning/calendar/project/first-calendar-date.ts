import type { ProjectInput } from '../../project-input.ts';
import { dateOfMoment } from './calendar-days.ts';
import { MOST_DAYS_BACK } from './constants.ts';
import { dayNumber } from './day-number.ts';

/**
 * Which date is day 0 of a project's calendar?
 *
 * @param doneTasks what is done, as typed
 * @param today today's date in the project's time zone, YYYY-MM-DD
 * @returns the date of the first task done, or today when none is or the first is too long ago
 *
 * Source: a rule of ours. Valid range: any rows. Departures: none. Example: nothing done: today.
 */
export function firstCalendarDate({ doneTasks }: Pick<ProjectInput, 'doneTasks'>, today: string): string {
  const dates = doneTasks
    .map(({ start }) => dateOfMoment(start))
    .filter((date) => date !== null)
    .filter((date) => date < today && dayNumber(today) - dayNumber(date) <= MOST_DAYS_BACK);
  return dates.toSorted()[0] ?? today;
}
