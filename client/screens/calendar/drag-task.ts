import type { ScaleLinear } from 'd3-scale';
import type { CalendarClock } from '../../format/calendar-clock.ts';
import type { TaskEntry } from './calendar-book.ts';
import { setCalendarView } from './calendar-view.ts';
import { hideTaskCard } from './task-card.ts';
import { pinTask } from './task-changes.ts';
import { isOpen } from './task-words.ts';

/** Starts are set on multiples of so many minutes, as the plan's are. */
const STEP_MIN = 5;
/** A press that moves less than this is a click, screen pixels. */
const CLICK_PX = 4;

/**
 * Follows a pressed bar: let go where it was, it opens; let go elsewhere, it is pinned there. A finger scrolls the
 * drawing instead, and then types the start.
 */
export function dragTask(
  press: PointerEvent,
  entry: TaskEntry,
  scale: ScaleLinear<number, number>,
  clock: CalendarClock,
  open: () => void,
): void {
  if (press.button !== 0) return;
  const bar = press.currentTarget as Element;
  const movable = isOpen(entry.task) && press.pointerType !== 'touch';
  const begin = entry.task.startMinute;
  let minute: number | null = null;
  const ended = new AbortController();
  const on = <Kind extends keyof DocumentEventMap>(
    kind: Kind,
    act: (event: DocumentEventMap[Kind]) => void,
  ): void => document.addEventListener(kind, act, { signal: ended.signal });
  const settle = (): void => {
    ended.abort();
    if (minute !== null) setCalendarView({ moving: null });
  };

  on('pointermove', (move) => {
    const by = move.clientX - press.clientX;
    if (!movable || (minute === null && Math.abs(by) < CLICK_PX)) return;
    move.preventDefault();
    hideTaskCard();
    minute = Math.max(0, Math.round(scale.invert(scale(begin) + by) / STEP_MIN) * STEP_MIN);
    setCalendarView({ moving: { taskId: entry.task.id, minute, held: true } });
  });
  on('pointercancel', settle);
  on('keydown', (event) => {
    if (event.key === 'Escape') settle();
  });
  on('pointerup', (up) => {
    const target = minute;
    ended.abort();
    if (target === null) {
      if (bar.contains(up.target as Node)) open();
      return;
    }
    setCalendarView({ moving: { taskId: entry.task.id, minute: target, held: false } });
    void pinTask(entry, clock.local(target)).then((taken) => {
      if (!taken) setCalendarView({ moving: null });
    });
  });
}
