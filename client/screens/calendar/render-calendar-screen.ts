import '../../fields/fields.css';
import './calendar.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { arrive } from '../../fields/arrive.ts';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { type AppState, actions } from '../../state/store.ts';
import { narrow } from '../cutting/narrow.ts';
import { answerWords, proofWords } from './answer-words.ts';
import { type CalendarBook, calendarBook } from './calendar-book.ts';
import { calendarView, setCalendarView } from './calendar-view.ts';
import { renderAgenda } from './render-agenda.ts';
import { renderFeed } from './render-feed.ts';
import { renderStanding } from './render-standing.ts';
import { renderTaskTable } from './render-task-table.ts';
import { renderTimeline } from './render-timeline.ts';
import { renderSetup } from './setup/render-setup.ts';

/** Every coat in its window, in this shop, in these working hours. */
export function renderCalendarScreen(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  actions.wantCalendar();
  arrive(state);
  const calendar = calendarBook(book, state.calendar);
  if (calendar !== null) letGoOfMoved(calendar);
  return html`<section class="page calendar-screen" aria-labelledby="calendar-title">
    <div class="page-head">
      <div>
        <h1 id="calendar-title">Calendar</h1>
        ${renderAnswer(calendar, state)}
      </div>
      <div class="page-acts">
        <button type="button" class="button" @click=${goToSetup}>Shop set-up</button>
        ${calendar === null ? nothing : renderFeed(calendar)}
      </div>
    </div>
    ${renderDates(book, calendar)} ${renderStanding(book, state.calendar, calendar)}
    ${calendar === null || calendar.plan.state !== 'planned' ? nothing : renderPlan(book, calendar)}
    ${renderSetup(book)}
  </section>`;
}

function renderAnswer(calendar: CalendarBook | null, state: AppState): TemplateResult {
  if (calendar === null && state.calendar?.state === 'ready')
    return html`<p class="calendar-answer" role="status">There is no plan: what it needs first stands below.</p>`;
  if (calendar === null)
    return html`<p class="calendar-answer" role="status">The first plan is being worked out.</p>`;
  const { plan, clock } = calendar;
  const proof = proofWords(plan, clock);
  return html`<p class="calendar-answer" role="status">${answerWords(plan, clock)}</p>
    ${proof === '' ? nothing : html`<p>${proof}</p>`}`;
}

function renderDates(book: ScreenBook, calendar: CalendarBook | null): TemplateResult | typeof nothing {
  if (calendar === null || calendar.plan.state !== 'planned') return nothing;
  const { plan, clock } = calendar;
  const date = (name: string, minute: number | null, below: string | TemplateResult) =>
    html`<div class="stat"><dt>${name}</dt><dd>${minute === null ? 'not known' : clock.moment(minute)}<small>${below}</small></dd></div>`;
  return html`<dl class="stats calendar-dates">
    ${date('Ready to handle', plan.readyToHandleMinute, 'every part can be stacked and turned')}
    ${date('Ready to assemble', plan.readyToAssembleMinute, 'cured first where the recipe says so')}
    ${date('Cured', plan.curedMinute, plan.curedMinute === null ? renderUncured(book, plan) : 'may come indoors and be used hard')}
    <div class="stat"><dt>Visits</dt><dd>${plan.visits}<small>working windows with something to do</small></dd></div>
  </dl>`;
}

/** Which products keep it from being known, each with the way to its figure. */
function renderUncured(book: ScreenBook, { uncured }: CalendarBook['plan']): TemplateResult {
  const places = uncured.filter(
    (one, index) =>
      uncured.findIndex(({ name, because }) => name === one.name && because === one.because) === index,
  );
  if (places.length === 0) return html`a recipe is left out`;
  return html`${places.map(
    ({ stepId, name, because }) => html`<span class="uncured"
      >${because === 'not-known' ? `the curing time of “${name}” is not entered` : `“${name}” never cures in this air`}
      <button type="button" class="link" @click=${() => goToFigure(book, stepId, because)}>${because === 'not-known' ? 'Enter it' : 'Change the air'}</button></span
    >`,
  )}`;
}

function goToFigure({ project }: ScreenBook, stepId: string, because: 'not-known' | 'never'): void {
  const productId = project.rows.steps.find(({ id }) => id === stepId)?.productId ?? '';
  if (because === 'never') goToSetup();
  else if (productId !== '') actions.goTo({ table: 'products', id: productId, field: 'cure' });
  else actions.goTo({ table: 'steps', id: stepId, field: null });
}

/** On a phone the days come first, one under the other; where there is room, the drawing and the list. */
function renderPlan(book: ScreenBook, calendar: CalendarBook): TemplateResult {
  return narrow()
    ? html`${renderAgenda(book, calendar)} ${renderTimeline(book, calendar)}`
    : html`${renderTimeline(book, calendar)} ${renderTaskTable(book, calendar)}`;
}

/** A bar that was let go of stays where it was put until the plan knows of it. */
function letGoOfMoved({ answer, byId }: CalendarBook): void {
  const { moving } = calendarView();
  if (moving === null || moving.held || answer.stale || answer.state === 'working') return;
  const task = byId.get(moving.taskId);
  if (task === undefined || task.task.state === 'pinned')
    queueMicrotask(() => setCalendarView({ moving: null }));
}

function goToSetup(): void {
  const title = document.querySelector<HTMLElement>('#setup-title');
  title?.scrollIntoView({ block: 'start' });
  title?.focus({ preventScroll: true });
}
