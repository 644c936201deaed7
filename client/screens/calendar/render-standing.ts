import { html, nothing, type TemplateResult } from 'lit-html';
import type { CalendarAnswer } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { actions } from '../../state/store.ts';
import type { CalendarBook } from './calendar-book.ts';
import { missedTasks } from './missed-tasks.ts';
import { nowMinute } from './now-minute.ts';
import { renderBlocks } from './render-blocks.ts';
import { openTask } from './task-dialog.ts';

/** How the plan stands: being worked out, out of date, missed, or with something in the way, each with its way out. */
export function renderStanding(
  book: ScreenBook,
  answer: CalendarAnswer | null,
  calendar: CalendarBook | null,
): TemplateResult {
  return html`<div class="standing">
    ${renderState(book, answer)} ${calendar === null ? nothing : renderBlocks(calendar)}
    ${calendar === null ? nothing : renderMissed(book, calendar)} ${answer === null ? nothing : renderProblems(answer)}
    ${calendar?.plan.state === 'nothing-to-do' ? renderNothing() : nothing}
  </div>`;
}

function renderState(
  { project }: ScreenBook,
  answer: CalendarAnswer | null,
): TemplateResult | typeof nothing {
  const old = answer !== null && (answer.stale || answer.revision < project.revision);
  if (answer?.state === 'failed')
    return html`<p class="standing-line warning" role="status">The calendar could not be worked out. It is tried again after the next change.</p>`;
  if (answer === null || answer.state === 'working' || old)
    return html`<p class="standing-line" role="status"><span class="busy" aria-hidden="true"></span>
      ${answer?.plan == null ? 'Planning.' : 'Planning anew; what is shown is the plan before the last change.'}</p>`;
  return nothing;
}

function renderMissed(book: ScreenBook, calendar: CalendarBook): TemplateResult | typeof nothing {
  const missed = missedTasks(calendar.entries, nowMinute(calendar.answer));
  if (missed.length === 0) return nothing;
  const { clock } = calendar;
  const closed = missed.some(({ kind }) => kind === 'closed');
  return html`<section class="standing-box ${closed ? 'error' : 'warning'}" aria-labelledby="missed-title">
    <h2 id="missed-title">${closed ? 'A window has closed' : 'Planned for before now'}</h2>
    <ul>
      ${missed.map(
        ({ entry, kind }) => html`<li>
          <button type="button" class="link" @click=${() => openTask(book, calendar, entry)}>${entry.title}, ${entry.batch.title}</button>
          ${
            kind === 'closed' && entry.task.allowedToMinute !== null
              ? html`had to begin by ${clock.moment(entry.task.allowedToMinute)} and is not ticked off. If it was done, say when; if not, plan anew: the next window, or scuff-sanding first, is then used where the product allows it.`
              : html`was to be over ${clock.moment(entry.task.endMinute)} and is not ticked off.`
          }
        </li>`,
      )}
    </ul>
    <button type="button" class="button" @click=${() => void actions.planCalendarFromNow()}>Not done: plan the rest from now</button>
  </section>`;
}

/** What else the calendar has to say; what is in the way has its own box. */
function renderProblems({ problems }: CalendarAnswer): TemplateResult | typeof nothing {
  const said = problems.filter(({ code }) => code !== 'calendar-does-not-fit');
  if (said.length === 0) return nothing;
  return html`<ul class="said-list">
    ${said.map(
      ({ severity, message, wayOut, at }) => html`<li class="said ${severity}">
        ${message} ${wayOut}
        <button type="button" class="link" @click=${() => actions.goTo(at)}>Go there</button>
      </li>`,
    )}
  </ul>`;
}

function renderNothing(): TemplateResult {
  return html`<div class="empty">
    <h2>Nothing to finish yet</h2>
    <p>Give the parts a finish recipe on the part list. Every coat of it is then planned here.</p>
    <button type="button" class="button primary" @click=${() => actions.show('parts')}>Go to the parts</button>
  </div>`;
}
