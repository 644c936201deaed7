import { calendarView, setCalendarView } from './calendar-view.ts';

/** What stands left of a moment that is scrolled to, screen pixels. */
const BEFORE = 60;

let watched: Element | undefined;
/** The drawing on which the first task has been brought into sight already. */
let begun: Element | undefined;
const observer = new ResizeObserver(([entry]) => {
  const width = Math.floor(entry?.contentRect.width ?? 0);
  if (width <= 0) return;
  if (width !== calendarView().width) setCalendarView({ width });
  bringFirst();
});

/** The drawing is made for the width there is. */
export function watchWidth(element: Element | undefined): void {
  if (element === watched) return;
  if (watched !== undefined) observer.unobserve(watched);
  watched = element;
  if (element !== undefined) observer.observe(element);
}

/** A drawing that is new on the screen begins at the first task still to be done, where that is out of sight. */
function bringFirst(): void {
  if (begun === watched) return;
  begun = watched;
  requestAnimationFrame(() => {
    const first = watched?.querySelector('.task[tabindex="0"] .bar');
    const left = Number(first?.getAttribute('x') ?? 0);
    if (left > calendarView().width - BEFORE) scrollToMinute(left);
  });
}

export function scrollToMinute(x: number): void {
  document.querySelector('.timeline-scroll')?.scrollTo({ left: x - BEFORE });
}
