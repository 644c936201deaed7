import type { Task, TaskEntry } from './calendar-book.ts';
import { isOpen } from './task-words.ts';

export interface MissedTask {
  readonly entry: TaskEntry;
  /** closed: its window is over; overdue: it was to be over by now and is not ticked off. */
  readonly kind: 'closed' | 'overdue';
}

/** What should have happened by now and is not ticked off, oldest first. */
export function missedTasks(entries: readonly TaskEntry[], nowMinute: number): readonly MissedTask[] {
  return entries.flatMap((entry): MissedTask[] => {
    const { task, done } = entry;
    if (done !== null || !isOpen(task)) return [];
    if (closesBefore(task, nowMinute)) return [{ entry, kind: 'closed' }];
    return task.endMinute <= nowMinute ? [{ entry, kind: 'overdue' }] : [];
  });
}

function closesBefore({ allowedToMinute, startMinute }: Task, nowMinute: number): boolean {
  return allowedToMinute !== null && allowedToMinute < nowMinute && startMinute < nowMinute;
}
