import type { CalendarClock } from '../../format/calendar-clock.ts';
import type { TaskEntry } from './calendar-book.ts';

export interface DayOfTasks {
  /** YYYY-MM-DD */
  readonly date: string;
  /** Of its first task, for printing the day. */
  readonly minute: number;
  readonly entries: readonly TaskEntry[];
}

/** Tasks by the day they start on, in order. */
export function dayList(entries: readonly TaskEntry[], clock: CalendarClock): readonly DayOfTasks[] {
  const days = new Map<string, TaskEntry[]>();
  for (const entry of entries) {
    const date = clock.date(entry.task.startMinute);
    const known = days.get(date);
    if (known === undefined) days.set(date, [entry]);
    else known.push(entry);
  }
  return [...days].map(([date, list]) => ({ date, minute: list[0]?.task.startMinute ?? 0, entries: list }));
}
