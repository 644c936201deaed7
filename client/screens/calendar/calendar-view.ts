import { actions } from '../../state/store.ts';
import { narrow } from '../cutting/narrow.ts';
import type { TaskSort } from './sort-tasks.ts';
import type { Zoom } from './time-scale.ts';

/** How this window shows the calendar. Nothing of it is stored. */
export interface CalendarView {
  readonly zoom: Zoom;
  /** Hours without hands in the shop take less room. */
  readonly narrowed: boolean;
  readonly sort: TaskSort;
  /** The bar the keyboard is on, or was last. */
  readonly currentId: string | null;
  /** A bar being dragged, or let go of and not planned yet, and where its start would be. */
  readonly moving: { readonly taskId: string; readonly minute: number; readonly held: boolean } | null;
  /** Width there is for the drawing. */
  readonly width: number;
}

let view: CalendarView = {
  zoom: narrow() ? 'day' : 'week',
  narrowed: true,
  sort: { field: 'start', down: false },
  currentId: null,
  moving: null,
  width: 900,
};

export function calendarView(): CalendarView {
  return view;
}

export function setCalendarView(patch: Partial<CalendarView>): void {
  view = { ...view, ...patch };
  actions.redraw();
}
