import type { TaskTimes } from '../calendar-batch.ts';
import { MINUTE_DUST } from '../constants.ts';
import type { MinuteSpan } from '../working-windows.ts';

/** Starts a task may have, by working hours and air alone: multiples of the step from `first` to `last`. */
export interface StartRange {
  readonly first: number;
  readonly last: number;
  /** Which working window it lies in. */
  readonly window: number;
}

/**
 * When may a task start, by working hours and air?
 *
 * @param times of the task, minutes from its start
 * @param windows working windows, in order
 * @param air spans in which its coat may be laid, in order; null for dry work
 * @param stepMin starts are multiples of this
 * @returns ranges in order, minutes since midnight of day 0; empty when it never may
 *
 * Source: definition: the whole visit lies in one working window, and laying in one stretch of good air. Valid range:
 * any. Departures: none. Example: 35 minutes in a window 480-540, step 5: starts 480 to 505.
 */
export function startRanges(
  times: TaskTimes,
  windows: readonly MinuteSpan[],
  air: readonly MinuteSpan[] | null,
  stepMin: number,
): StartRange[] {
  const ranges: StartRange[] = [];
  let span = 0;
  for (const [window, { fromMinute, toMinute }] of windows.entries()) {
    const from = fromMinute;
    const to = toMinute - times.handsOnMin;
    if (air === null) {
      add(from, to, window);
      continue;
    }
    while (span < air.length && (air[span] as MinuteSpan).toMinute <= fromMinute) span++;
    for (let at = span; at < air.length && (air[at] as MinuteSpan).fromMinute < toMinute; at++) {
      const good = air[at] as MinuteSpan;
      add(
        Math.max(from, good.fromMinute - times.layFromMin),
        Math.min(to, good.toMinute - times.layToMin),
        window,
      );
    }
  }
  return ranges;

  function add(from: number, to: number, window: number): void {
    const first = Math.ceil(from / stepMin) * stepMin;
    const last = Math.floor(to / stepMin) * stepMin;
    if (first <= last) ranges.push({ first, last, window });
  }
}

/** First start at or after a minute, with its window; null when there is none. Minutes since midnight of day 0. */
export function nextStart(
  ranges: readonly StartRange[],
  notBefore: number,
  stepMin: number,
  closed: ReadonlySet<number> | null,
): { readonly minute: number; readonly window: number } | null {
  const minute = notBefore - MINUTE_DUST;
  let low = 0;
  let high = ranges.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ranges[middle] as StartRange).last < minute) low = middle + 1;
    else high = middle;
  }
  for (; low < ranges.length; low++) {
    const { first, last, window } = ranges[low] as StartRange;
    if (closed?.has(window)) continue;
    // A pinned start may lie between two steps: then the range is that one minute.
    const at =
      minute <= first
        ? first
        : first === last
          ? Number.POSITIVE_INFINITY
          : Math.ceil(minute / stepMin) * stepMin;
    if (at <= last) return { minute: at, window };
  }
  return null;
}
