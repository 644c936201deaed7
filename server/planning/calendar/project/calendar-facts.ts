import { MINUTES_PER_DAY } from '../../climate/constants.ts';
import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import type { CalendarDone, CalendarPin } from '../calendar-input.ts';
import { MOST_HORIZON_DAYS } from '../constants.ts';
import { type CalendarDays, minuteOfMoment } from './calendar-days.ts';
import { calendarProblem, quoted } from './calendar-problem.ts';
import { MOST_DAYS_BACK } from './constants.ts';

/**
 * Which tasks are pinned, and which are done?
 *
 * @param input pins and done tasks as typed
 * @param days the calendar's days
 * @param startMinute nothing new begins before
 * @returns both in real minutes; and problems: what cannot be read, is out of reach, is there twice or cannot be kept
 *
 * Source: definition. Valid range: any rows. Departures: a pin that has passed is left out, and the task planned anew; of
 * two rows for a task the later counts; what is done is done, whatever is pinned.
 * Example: day 0 is 2027-03-13: a pin at "2027-03-14T09:00" is minute 1980.
 */
export function calendarFacts(
  { pins, doneTasks }: Pick<ProjectInput, 'pins' | 'doneTasks'>,
  days: CalendarDays,
  startMinute: number,
): {
  readonly pins: readonly CalendarPin[];
  readonly done: readonly CalendarDone[];
  readonly problems: readonly Problem[];
} {
  const problems: Problem[] = [];
  const pinned = new Map<string, CalendarPin>();
  const done = new Map<string, CalendarDone>();
  for (const { id, taskId, start, end } of doneTasks) {
    const at = (field: string) => ['doneTasks', id, field] as const;
    const from = moment(start, at('start'));
    const to = moment(end, at('end'));
    if (from === null || to === null) continue;
    if (to < from) {
      problems.push(
        calendarProblem(
          'calendar-hours-backwards',
          'error',
          at('end'),
          `This task ends at ${quoted(end)}, before it begins at ${quoted(start)}.`,
          'Enter when it was begun and when it was over.',
        ),
      );
      continue;
    }
    if (done.has(taskId)) twice(at('taskId'), 'ticked off');
    done.set(taskId, { taskId, startMinute: from, endMinute: to });
  }
  for (const { id, taskId, start } of pins) {
    const at = (field: string) => ['pins', id, field] as const;
    const from = moment(start, at('start'));
    if (from === null || done.has(taskId)) continue;
    if (from < startMinute) {
      problems.push(
        calendarProblem(
          'calendar-pin-kept-from',
          'warning',
          at('start'),
          `The moment this task is pinned to, ${quoted(start)}, has passed; it is planned anew.`,
          'Tick the task off if it was done, pin it to a later moment, or take the pin out.',
        ),
      );
      continue;
    }
    if (pinned.has(taskId)) twice(at('taskId'), 'pinned');
    pinned.set(taskId, { taskId, startMinute: from });
  }
  return { pins: [...pinned.values()], done: [...done.values()], problems };

  function moment(text: string, at: readonly ['pins' | 'doneTasks', string, string]): number | null {
    const minute = minuteOfMoment(text, days);
    if (minute === null) {
      const message =
        text.trim() === '' ? 'This moment is missing.' : `${quoted(text)} cannot be read as a date and time.`;
      problems.push(
        calendarProblem(
          'calendar-date-unreadable',
          'error',
          at,
          message,
          'Enter date and time as 2027-03-14T09:00.',
        ),
      );
      return null;
    }
    if (minute >= 0 && minute < MOST_HORIZON_DAYS * MINUTES_PER_DAY) return minute;
    const reach = minute < 0 ? `${MOST_DAYS_BACK} days back` : `${MOST_HORIZON_DAYS} days ahead`;
    problems.push(
      calendarProblem(
        'calendar-date-out-of-reach',
        'error',
        at,
        `The calendar looks up to ${reach}, and ${quoted(text)} is beyond that.`,
        'Correct the date, or delete the row.',
      ),
    );
    return null;
  }

  function twice(at: readonly ['pins' | 'doneTasks', string, string], what: string): void {
    problems.push(
      calendarProblem(
        'calendar-row-twice',
        'warning',
        at,
        `This task is ${what} twice; the later row counts.`,
        'Delete one of the two rows.',
      ),
    );
  }
}
