import type { CalendarDay } from '../../../server/http/contract.ts';

export interface HourMark {
  readonly x: number;
  readonly minute: number;
}

/** Hours stand at least so far apart on the axis, drawing units. */
const APART = 38;
const MINUTES_PER_HOUR = 60;
/** Where hours are wide apart, the whole hours between are named too. */
const EVERY = 1;

/**
 * Times to name along the axis: when the shop opens and closes first, then whole hours where there is room. Midnights
 * carry the date instead.
 */
export function hourMarks(
  days: readonly CalendarDay[],
  scale: (minute: number) => number,
): readonly HourMark[] {
  const taken: HourMark[] = [];
  const blocked = days.map(({ fromMinute }) => scale(fromMinute));
  const offer = (minute: number): void => {
    const x = scale(minute);
    if ([...blocked, ...taken.map((mark) => mark.x)].every((other) => Math.abs(other - x) >= APART))
      taken.push({ x, minute });
  };
  for (const { windows } of days)
    for (const { fromMinute, toMinute } of windows) {
      offer(fromMinute);
      offer(toMinute);
    }
  for (const { fromMinute, toMinute } of days)
    for (let minute = fromMinute; minute < toMinute; minute += EVERY * MINUTES_PER_HOUR) offer(minute);
  return taken.sort((a, b) => a.x - b.x);
}

/** Days whose date is named, so that names do not run into each other; the first of every `step`. */
export function dateStep(
  days: readonly CalendarDay[],
  scale: (minute: number) => number,
  nameWidth: number,
): number {
  const narrowest = Math.min(...days.map(({ fromMinute, toMinute }) => scale(toMinute) - scale(fromMinute)));
  return Math.max(1, Math.ceil(nameWidth / Math.max(narrowest, 1)));
}
