import type { Task } from './calendar-book.ts';

/** A stretch of the drawing, in its units. */
export interface Stretch {
  readonly x: number;
  readonly width: number;
}

export interface TaskShapes {
  readonly bar: Stretch;
  /** From the last stroke until touch-dry, and from there until dry to handle; null for dry work. */
  readonly touchTail: Stretch | null;
  readonly handleTail: Stretch | null;
  /** When the task may start. `open`: it never closes, and is drawn to the bar's end. */
  readonly window: Stretch & { readonly open: boolean };
}

/** A bar is never narrower, drawing units: it has to be seen and hit. */
export const LEAST_BAR = 6;

/** Where the marks of one task stand on its lane. `scale` turns minutes into drawing units. */
export function taskShapes(task: Task, scale: (minute: number) => number): TaskShapes {
  const stretch = (from: number, to: number, least = 0): Stretch => {
    const x = scale(from);
    return { x, width: Math.max(least, scale(to) - x) };
  };
  const { startMinute, endMinute, layToMinute, touchDryMinute, handleDryMinute } = task;
  const bar = stretch(startMinute, endMinute, LEAST_BAR);
  const from = Math.min(task.allowedFromMinute, startMinute);
  const open = task.allowedToMinute === null;
  return {
    bar,
    touchTail: layToMinute === null || touchDryMinute === null ? null : stretch(layToMinute, touchDryMinute),
    handleTail:
      touchDryMinute === null || handleDryMinute === null ? null : stretch(touchDryMinute, handleDryMinute),
    window: { ...stretch(from, task.allowedToMinute ?? endMinute, open ? 0 : LEAST_BAR), open },
  };
}
