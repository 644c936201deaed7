import { html, svg, type TemplateResult } from 'lit-html';
import type { CalendarBook } from './calendar-book.ts';
import { calendarView, setCalendarView } from './calendar-view.ts';
import type { Zoom } from './time-scale.ts';

const ZOOMS: readonly (readonly [Zoom, string])[] = [
  ['day', 'Day'],
  ['week', 'Week'],
  ['whole', 'Whole'],
];

/** Above the timeline: how much of it is seen, and what its marks mean. */
export function renderTimelineHead({ answer, plan }: CalendarBook, toNow: () => void): TemplateResult {
  const view = calendarView();
  const has = (state: (typeof plan.tasks)[number]['state']): boolean =>
    plan.tasks.some((task) => task.state === state);
  return html`<header class="timeline-head">
      <h2 id="timeline-title">Timeline</h2>
      <div class="toolbar">
        <label class="check"
          ><input
            type="checkbox"
            .checked=${view.narrowed}
            @change=${(event: Event) => setCalendarView({ narrowed: (event.currentTarget as HTMLInputElement).checked })}
          />
          Narrow closed hours</label
        >
        <div class="zooms" role="group" aria-label="How much is seen">
          ${ZOOMS.map(
            ([zoom, words]) =>
              html`<button type="button" class="button" aria-pressed=${zoom === view.zoom} @click=${() => setCalendarView({ zoom })}>${words}</button>`,
          )}
        </div>
        <button type="button" class="button" @click=${toNow}>Now</button>
      </div>
    </header>
    <ul class="timeline-key" aria-label="What the marks mean">
      ${key('coat', svg`<rect class="bar" x="1" y="3" width="16" height="12" rx="3" />`, 'coat')}
      ${key('dry', svg`<rect class="bar" x="1" y="3" width="16" height="12" rx="3" />`, 'sanding, dusting')}
      ${key('', svg`<rect class="touch-tail" y="3" width="18" height="12" />`, 'wet')}
      ${key('', svg`<rect class="handle-tail" y="6" width="18" height="6" />`, 'drying until it can be handled')}
      ${key('', svg`<path class="window" d="M1 4v10m0-5H17m0-5v10" />`, 'may start')}
      ${has('pinned') ? key('pinned', svg`<path class="state-mark" transform="translate(9 9)" d="M0 5V0M-3.5-5h7l-1.5 2.5V0h-4v-2.5z" />`, 'pinned') : ''}
      ${has('done') ? key('done', svg`<path class="state-mark line" transform="translate(9 9)" d="m-4-1 3 3 5-6" />`, 'done') : ''}
      ${has('assumed') ? key('assumed', svg`<rect class="bar" x="1" y="3" width="16" height="12" rx="3" />`, 'taken as done') : ''}
      ${key('', svg`<rect class="closed" width="18" height="18" />`, 'closed')}
      ${key('', svg`<rect class="closed" width="18" height="18" /><rect class="day-off" width="18" height="18" />`, 'day off')}
      ${answer.climate.some(({ nearDew }) => nearDew) ? key('', svg`<rect class="dew" width="18" height="18" />`, 'too near the dew point') : ''}
      ${key('', svg`<rect class="night" y="6" width="18" height="5" />`, 'night, 22 to 6')}
    </ul>`;
}

function key(state: string, shape: unknown, words: string): TemplateResult {
  return html`<li><svg class="timeline-drawing" viewBox="0 0 18 18" aria-hidden="true"><g class="task ${state}">${shape}</g></svg> ${words}</li>`;
}
