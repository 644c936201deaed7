import type { Problem } from '../../problem.ts';
import type { PinnedTask } from '../../project-input.ts';
import type { CalendarBatch, CalendarTask } from '../calendar-batch.ts';
import type { CalendarPin } from '../calendar-input.ts';
import { calendarProblem } from './calendar-problem.ts';

/**
 * Which pins contradict the order of a batch's tasks?
 *
 * @param batches from calendarTasks, their tasks in order
 * @param pins in real minutes
 * @param rows the same as typed, for their ids
 * @returns a problem at each pin that lies before, or at the same time as, the pin of an earlier task
 *
 * Source: definition: tasks of a batch follow each other. Valid range: any. Departures: none.
 * Example: coat 2 pinned to Saturday and coat 1 to Sunday: one problem, at coat 2.
 */
export function pinOrderProblems(
  batches: readonly CalendarBatch[],
  pins: readonly CalendarPin[],
  rows: readonly PinnedTask[],
): Problem[] {
  const minuteOf = new Map(pins.map(({ taskId, startMinute }) => [taskId, startMinute]));
  const problems: Problem[] = [];
  for (const { tasks } of batches) {
    let latest: { readonly task: CalendarTask; readonly minute: number } | null = null;
    for (const task of tasks) {
      const minute = minuteOf.get(task.id);
      if (minute === undefined) continue;
      if (latest !== null && minute <= latest.minute)
        problems.push(
          calendarProblem(
            'calendar-pins-contradict',
            'error',
            ['pins', rows.findLast(({ taskId }) => taskId === task.id)?.id ?? null, 'start'],
            `${nameOf(task)} comes after ${nameOf(latest.task)}, but is pinned to no later moment.`,
            'Pin it to a later moment, or take one of the two pins out.',
          ),
        );
      else latest = { task, minute };
    }
  }
  return problems;
}

function nameOf({ kind, name, number, face }: CalendarTask): string {
  return `“${name === '' ? kind : name}” ${number} of the ${face === 'both' ? 'faces' : `${face} face`}`;
}
