import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { CalendarDay } from '../../../server/http/contract.ts';

export type Zoom = 'day' | 'week' | 'whole';
/** Days that fill the width at each zoom, or all where there are fewer; null: as many as there are. */
export const ZOOM_DAYS: Readonly<Record<Zoom, number | null>> = { day: 1, week: 7, whole: null };

/** How much of the width of an open minute a closed one keeps, where closed hours are narrowed. Ours, no source. */
const CLOSED_SHARE = 0.18;
/** A day is never narrower, drawing units. */
const LEAST_DAY = 26;

/**
 * Minutes to drawing units, from the first day's midnight to the end of the last. With `narrowed`, hours without hands
 * in the shop take less room than working hours; every day keeps the width it has otherwise on average.
 */
export function timeScale(
  days: readonly CalendarDay[],
  { zoom, width, narrowed }: { readonly zoom: Zoom; readonly width: number; readonly narrowed: boolean },
): ScaleLinear<number, number> {
  const shown = Math.max(1, Math.min(ZOOM_DAYS[zoom] ?? days.length, days.length));
  const total = Math.max((width / shown) * days.length, LEAST_DAY * days.length, 1);
  const first = days[0]?.fromMinute ?? 0;
  const end = days.at(-1)?.toMinute ?? first + 1;
  const windows = days.flatMap((day) => day.windows);
  if (!narrowed || windows.length === 0) return scaleLinear([first, end], [0, total]);
  const marks = [
    ...new Set([first, ...windows.flatMap(({ fromMinute, toMinute }) => [fromMinute, toMinute]), end]),
  ]
    .filter((minute) => minute >= first && minute <= end)
    .sort((a, b) => a - b);
  const weights = marks.slice(1).map((to, index) => {
    const from = marks[index] as number;
    const open = windows.some(({ fromMinute, toMinute }) => fromMinute <= from && toMinute >= to);
    return (to - from) * (open ? 1 : CLOSED_SHARE);
  });
  const unit = total / weights.reduce((sum, weight) => sum + weight, 0);
  const places = [0];
  for (const weight of weights) places.push((places.at(-1) as number) + weight * unit);
  return scaleLinear(marks, places);
}
