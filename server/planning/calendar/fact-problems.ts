import type { Problem } from '../problem.ts';
import type { CalendarBatch } from './calendar-batch.ts';
import type { CalendarInput } from './calendar-input.ts';

/**
 * Which pins and done facts do not go with the tasks of the calendar?
 *
 * @param input its pins and done facts, minutes since midnight of day 0
 * @param batches from calendarTasks
 * @returns a problem per fact that names no task, and per task that is not ticked off though a later one is;
 *   placed at the task's id, as the calendar does not know the rows
 *
 * Source: definition. Valid range: any. Departures: none.
 */
export function factProblems(input: CalendarInput, batches: readonly CalendarBatch[]): Problem[] {
  const problems: Problem[] = [];
  const ids = new Set(batches.flatMap(({ tasks }) => tasks.map(({ id }) => id)));
  for (const [field, facts] of [['pins', input.pins] as const, ['doneTasks', input.done] as const])
    for (const { taskId } of facts)
      if (!ids.has(taskId))
        problems.push({
          code: 'calendar-task-unknown',
          severity: 'warning',
          at: { table: field, id: taskId, field: 'taskId' },
          message: `The calendar has no task "${taskId}" any more, so what was ${field === 'pins' ? 'pinned' : 'ticked off'} for it is left out.`,
          wayOut: 'Remove the entry, or set it again on the task that took its place.',
        });
  const done = new Set(input.done.map(({ taskId }) => taskId));
  for (const { tasks } of batches) {
    const lastDone = tasks.findLastIndex(({ id }) => done.has(id));
    for (const task of tasks.slice(0, Math.max(0, lastDone)))
      if (!done.has(task.id))
        problems.push({
          code: 'calendar-done-out-of-order',
          severity: 'warning',
          at: { table: 'doneTasks', id: task.id, field: 'taskId' },
          message: `"${task.name || task.kind}" of batch ${task.batchId} is not ticked off, though a later task of the batch is; it is taken as done.`,
          wayOut: 'Tick it off with the time it was done, or take back the later one.',
        });
  }
  return problems;
}
