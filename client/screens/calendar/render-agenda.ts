import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import type { CalendarBook, TaskEntry } from './calendar-book.ts';
import { dayList } from './day-list.ts';
import { printDaySheets } from './print-day-sheets.ts';
import { openTask } from './task-dialog.ts';
import { FACE_WORDS, STATE_WORDS } from './task-words.ts';

/** The plan day by day, one task under the other: what a phone shows first. */
export function renderAgenda(book: ScreenBook, calendar: CalendarBook): TemplateResult {
  const { entries, clock } = calendar;
  return html`<section class="panel agenda" aria-labelledby="agenda-title">
    <header>
      <h2 id="agenda-title">Day by day</h2>
      <button type="button" class="button plain icon" aria-label="Print day sheets" title="Print day sheets" @click=${() => printDaySheets()}>
        ${screenIcon('print')}
      </button>
    </header>
    ${repeat(
      dayList(entries, clock),
      ({ date }) => date,
      (day) => html`<h3>${clock.day(day.minute)}</h3>
        <ol>
          ${repeat(
            day.entries,
            ({ task }) => task.id,
            (entry) => agendaLine(book, calendar, entry),
          )}
        </ol>`,
    )}
  </section>`;
}

function agendaLine(book: ScreenBook, calendar: CalendarBook, entry: TaskEntry): TemplateResult {
  const { task, title, batch, litres } = entry;
  const words = [
    FACE_WORDS[task.face],
    task.layFromMinute === null || litres === null ? '' : book.formats.volume(litres),
    batch.title,
  ];
  return html`<li>
    <button type="button" class="agenda-task" aria-haspopup="dialog" data-open-task=${task.id} @click=${() => openTask(book, calendar, entry)}>
      <span class="agenda-time">${calendar.clock.time(task.startMinute)}</span>
      <span class="agenda-words"><b>${title}</b> ${task.state === 'planned' ? '' : html`<span class="task-state ${task.state}">${STATE_WORDS[task.state]}</span>`}
        <small>${words.filter((word) => word !== '').join(' · ')}</small></span>
    </button>
  </li>`;
}
