import './print-day-sheets.css';
import { html, nothing, render, type TemplateResult } from 'lit-html';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { getState } from '../../state/store.ts';
import { CAUTIONS, RAGS_CAUTION } from '../finish/render-cautions.ts';
import { airAt } from './air-at.ts';
import { type CalendarBook, calendarBook, type TaskEntry } from './calendar-book.ts';
import { type DayOfTasks, dayList } from './day-list.ts';
import { FACE_WORDS, isOpen } from './task-words.ts';

/** The plan on paper: a page for each day with work still to be done. Made only while printing. */

export function printDaySheets(): void {
  window.print();
}

addEventListener('beforeprint', () => {
  const state = getState();
  const book = state.screen === 'calendar' ? screenBook(state) : null;
  const calendar = book === null ? null : calendarBook(book, state.calendar);
  if (book === null || calendar === null || calendar.entries.length === 0) return;
  const paper = document.createElement('div');
  paper.id = 'calendar-paper';
  document.body.append(paper);
  render(daySheets(book, calendar), paper);
});

addEventListener('afterprint', () => document.querySelector('#calendar-paper')?.remove());

function daySheets(book: ScreenBook, calendar: CalendarBook): TemplateResult {
  const open = calendar.entries.filter(({ task }) => isOpen(task));
  const days = dayList(open.length > 0 ? open : calendar.entries, calendar.clock);
  return html`${days.map((day, index) => daySheet(book, calendar, day, `Day ${index + 1} of ${days.length}`))}`;
}

function daySheet(book: ScreenBook, calendar: CalendarBook, day: DayOfTasks, place: string): TemplateResult {
  const { clock } = calendar;
  const oil = day.entries.some(({ task }) => hasOil(book, task.stepId));
  return html`<section class="paper-day">
    <header class="paper-day-head">
      <p><b>${book.settings.name}</b><span>${place}</span></p>
      <h2>${clock.longDay(day.minute)}</h2>
    </header>
    <table>
      <thead><tr><th></th><th>Time</th><th>Task</th><th>Parts</th><th>Area</th><th>Liquid</th><th>Air</th></tr></thead>
      <tbody>${day.entries.map((entry) => taskLine(book, calendar, entry))}</tbody>
    </table>
    ${oil ? html`<p class="paper-rags"><b>${RAGS_CAUTION}</b></p>` : nothing}
    <ul class="paper-cautions">${CAUTIONS.filter((caution) => caution !== RAGS_CAUTION || !oil).map((caution) => html`<li>${caution}</li>`)}</ul>
    <p class="paper-actual">Begun at ____________ ended at ____________ &nbsp; Air measured: ______ ° ______ %</p>
  </section>`;
}

function taskLine(book: ScreenBook, { clock, answer }: CalendarBook, entry: TaskEntry): TemplateResult {
  const { task, title, batch, litres } = entry;
  const { formats } = book;
  const air = airAt(answer.climate, task.layFromMinute ?? task.startMinute);
  const notes = [
    task.scuffFirst ? 'Scuff-sand the coat before, then dust off.' : '',
    task.allowedToMinute === null ? '' : `Begin no later than ${clock.moment(task.allowedToMinute)}.`,
    task.touchDryMinute === null ? '' : `Touch-dry ${clock.moment(task.touchDryMinute)}.`,
    task.handleDryMinute === null ? '' : `Do not move before ${clock.moment(task.handleDryMinute)}.`,
  ].filter((note) => note !== '');
  return html`<tr>
    <td><span class="paper-tick"></span></td>
    <td class="paper-time">${clock.span(task.startMinute, task.endMinute)}</td>
    <td>
      <b>${title}</b>, ${FACE_WORDS[task.face]}${task.name === '' ? nothing : html`<br />${task.name}`}
      ${notes.length === 0 ? nothing : html`<br /><small>${notes.join(' ')}</small>`}
    </td>
    <td>${batch.parts}<br /><small>${batch.title}</small></td>
    <td class="paper-short">${formats.area(task.areaM2)}</td>
    <td class="paper-short">${task.layFromMinute === null ? '' : litres === null ? 'not known' : formats.volume(litres)}</td>
    <td class="paper-short">${air === null ? '' : html`${formats.figure(air.temperatureC, 'C')}<br />${Math.round(air.humidityPercent)} %`}</td>
  </tr>`;
}

/** Whether a step lays something whose rags can set themselves alight; what is not known counts as such. */
function hasOil({ project, products }: ScreenBook, stepId: string): boolean {
  const step = project.rows.steps.find(({ id }) => id === stepId);
  if (step === undefined) return false;
  const ids = [
    step.productId,
    ...project.rows.components
      .filter(({ blendId }) => step.blendId !== '' && blendId === step.blendId)
      .map(({ productId }) => productId),
  ];
  return ids.some((id) => {
    const product = products.get(id);
    return product?.kind === 'finish' && product.choices.carrier !== 'water';
  });
}
