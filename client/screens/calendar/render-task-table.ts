import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { stackCell } from '../../fields/stack-table.ts';
import type { CalendarBook, TaskEntry } from './calendar-book.ts';
import { calendarView, setCalendarView } from './calendar-view.ts';
import { printDaySheets } from './print-day-sheets.ts';
import { type SortField, sortTasks } from './sort-tasks.ts';
import { openTask } from './task-dialog.ts';
import { FACE_WORDS, STATE_WORDS } from './task-words.ts';

const COLUMNS: readonly (readonly [SortField, string, string?])[] = [
  ['start', 'Day'],
  ['start', 'Start'],
  ['end', 'End'],
  ['task', 'Task'],
  ['batch', 'Parts'],
  ['face', 'Face'],
  ['area', 'Area', 'number'],
  ['litres', 'Liquid', 'number'],
  ['closes', 'Window closes'],
  ['state', 'State'],
];

/** The tasks as a list that can be sorted by every column; a task's name opens it. */
export function renderTaskTable(book: ScreenBook, calendar: CalendarBook): TemplateResult {
  const { sort } = calendarView();
  return html`<section class="panel" aria-labelledby="tasks-title">
    <header>
      <h2 id="tasks-title">Tasks</h2>
      <button type="button" class="button" @click=${() => printDaySheets()}>${screenIcon('print')} Print day sheets</button>
    </header>
    <div class="body flush task-table">
      <table class="table" aria-labelledby="tasks-title">
        <thead>
          <tr>
            ${COLUMNS.map(([field, words, kind], index) => {
              // Day and start are one order; the day's heading shows it.
              const sorted = sort.field === field && index !== 1;
              return html`<th scope="col" class=${kind ?? ''} aria-sort=${sorted ? (sort.down ? 'descending' : 'ascending') : nothing}>
                <button type="button" class="sort" @click=${() => sortBy(field)}>${words}<span aria-hidden="true">${sorted ? (sort.down ? ' ↓' : ' ↑') : ''}</span></button>
              </th>`;
            })}
          </tr>
        </thead>
        <tbody>
          ${repeat(
            sortTasks(calendar.entries, sort),
            ({ task }) => task.id,
            (entry) => taskRow(book, calendar, entry),
          )}
        </tbody>
      </table>
    </div>
  </section>`;
}

function taskRow(book: ScreenBook, calendar: CalendarBook, entry: TaskEntry): TemplateResult {
  const { task, title, batch, litres } = entry;
  const { clock } = calendar;
  const { formats } = book;
  const coat = task.layFromMinute !== null;
  return html`<tr data-state=${task.state}>
    ${stackCell('Day', clock.day(task.startMinute))} ${stackCell('Start', clock.time(task.startMinute))}
    ${stackCell('End', clock.date(task.endMinute) === clock.date(task.startMinute) ? clock.time(task.endMinute) : clock.moment(task.endMinute))}
    ${stackCell(
      'Task',
      html`<button type="button" class="link" aria-haspopup="dialog" data-open-task=${task.id} @click=${() => openTask(book, calendar, entry)}>${title}</button
        ><span class="small">${task.name}</span>`,
    )}
    ${stackCell('Parts', html`${batch.title}<span class="small task-parts" title=${batch.parts}>${batch.parts}</span>`)}
    ${stackCell('Face', FACE_WORDS[task.face])} ${stackCell('Area', formats.area(task.areaM2), 'number')}
    ${stackCell('Liquid', coat ? formats.volume(litres) : '', 'number')}
    ${stackCell('Window closes', task.allowedToMinute === null ? html`<span class="never">stays open</span>` : clock.moment(task.allowedToMinute))}
    ${stackCell('State', html`<span class="task-state ${task.state}">${STATE_WORDS[task.state]}</span>`)}
  </tr>`;
}

function sortBy(field: SortField): void {
  const { sort } = calendarView();
  setCalendarView({ sort: { field, down: sort.field === field && !sort.down } });
}
