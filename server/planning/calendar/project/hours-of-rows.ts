import type { Problem } from '../../problem.ts';
import type { ShopHours } from '../../project-input.ts';
import type { WorkWindow } from '../calendar-input.ts';
import { DAYS_PER_WEEK } from '../constants.ts';
import { calendarProblem, quoted } from './calendar-problem.ts';
import { readClockTime } from './read-clock-time.ts';

/**
 * When are there hands in the shop, by weekday?
 *
 * @param rows working windows as typed
 * @returns seven lists, Monday first, minutes after midnight; and a problem for each row that cannot be used, or where
 *   none is left
 *
 * Source: definition. Valid range: any rows. Departures: an end of 0:00 is midnight at the end of the day.
 * Example: weekday 5, "9:00" to "17:00" is Saturday 540 to 1020.
 */
export function hoursOfRows(rows: readonly ShopHours[]): {
  readonly hours: readonly (readonly WorkWindow[])[];
  readonly problems: readonly Problem[];
} {
  const hours: WorkWindow[][] = Array.from({ length: DAYS_PER_WEEK }, () => []);
  const problems: Problem[] = [];
  for (const { id, weekday, from, to } of rows) {
    const fromMin = readClockTime(from);
    const toMin = readClockTime(to) === 0 ? readClockTime('24:00') : readClockTime(to);
    if (fromMin === null) problems.push(unreadable(id, 'from', from));
    if (toMin === null) problems.push(unreadable(id, 'to', to));
    if (fromMin === null || toMin === null) continue;
    if (fromMin < toMin) hours[weekday]?.push({ fromMin, toMin });
    else
      problems.push(
        calendarProblem(
          'calendar-hours-backwards',
          'error',
          ['shopHours', id, 'to'],
          `These working hours end at ${quoted(to)}, which is not after their beginning, ${quoted(from)}.`,
          'Enter a later end; a shift past midnight is two rows, one to 24:00 and one from 0:00 of the next day.',
        ),
      );
  }
  if (hours.every((windows) => windows.length === 0))
    problems.push(
      calendarProblem(
        'calendar-no-hours',
        'error',
        ['shopHours', null, null],
        'There are no working hours, so nothing can be planned.',
        'Add the hours in which you can work, for at least one weekday.',
      ),
    );
  return { hours, problems };
}

function unreadable(id: string, field: 'from' | 'to', text: string): Problem {
  return calendarProblem(
    'calendar-time-unreadable',
    'error',
    ['shopHours', id, field],
    text.trim() === '' ? 'This time is missing.' : `${quoted(text)} cannot be read as a time of day.`,
    'Enter a time as 18:00, 9.30 or 6 pm.',
  );
}
