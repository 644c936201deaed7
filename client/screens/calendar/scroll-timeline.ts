import { calendarView, setCalendarView } from './calendar-view.ts';

/** What stands left of a moment that is scrolled to, screen pixels. */
const BEFORE = 60;

let watched: Element | undefined;
const observer = new ResizeObserver(([entry]) => {
  const width = Math.floor(entry?.contentRect.width ?? 0);
  if (width > 0 && width !== calendarView().width) setCalendarView({ width });
});

/** The drawing is made for the width there is. */
export function watchWidth(element: Element | undefined): void {
  if (element === watched) return;
  if (watched !== undefined) observer.unobserve(watched);
  watched = element;
  if (element !== undefined) observer.observe(element);
}

export function scrollToMinute(x: number): void {
  document.querySelector('.timeline-scroll')?.scrollTo({ left: x - BEFORE });
}
