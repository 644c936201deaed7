import type { TaskEntry } from './calendar-book.ts';

export type SortField = 'start' | 'end' | 'task' | 'batch' | 'face' | 'area' | 'litres' | 'closes' | 'state';
export interface TaskSort {
  readonly field: SortField;
  readonly down: boolean;
}

const VALUES: Readonly<Record<SortField, (entry: TaskEntry) => string | number | null>> = {
  start: ({ task }) => task.startMinute,
  end: ({ task }) => task.endMinute,
  task: ({ title }) => title,
  batch: ({ batch }) => batch.title,
  face: ({ task }) => task.face,
  area: ({ task }) => task.areaM2,
  litres: ({ litres }) => litres,
  closes: ({ task }) => task.allowedToMinute,
  state: ({ task }) => task.state,
};

/** Tasks in the order asked for; equal ones by their start, and those without a value last either way. */
export function sortTasks(entries: readonly TaskEntry[], { field, down }: TaskSort): readonly TaskEntry[] {
  const value = VALUES[field];
  const sign = down ? -1 : 1;
  return [...entries].sort((a, b) => {
    const [left, right] = [value(a), value(b)];
    const start = a.task.startMinute - b.task.startMinute;
    if (left === null || right === null) return Number(left === null) - Number(right === null) || start;
    return sign * compare(left, right) || start;
  });
}

function compare(left: string | number, right: string | number): number {
  return typeof left === 'number' && typeof right === 'number'
    ? left - right
    : String(left).localeCompare(String(right), undefined, { numeric: true });
}
