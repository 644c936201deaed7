import { html, nothing, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { airAt } from './air-at.ts';
import type { CalendarBook, TaskEntry } from './calendar-book.ts';
import { FACE_WORDS, STATE_WORDS } from './task-words.ts';
import { allowedName, whyThisTime } from './why-this-time.ts';

/** What there is to know of one task: on its card, and above its form. */
export function renderFacts(book: ScreenBook, calendar: CalendarBook, entry: TaskEntry): TemplateResult {
  const { clock, answer, byId } = calendar;
  const named = (taskId: string): string => {
    const other = byId.get(taskId);
    if (other === undefined) return 'another task';
    const title = `“${other.title}”, ${FACE_WORDS[other.task.face]}`;
    return other.task.batchId === entry.task.batchId ? title : `${title}, of ${other.batch.title}`;
  };
  const { task, batch, litres } = entry;
  const { formats } = book;
  const air = airAt(answer.climate, task.layFromMinute ?? task.startMinute);
  const fact = (name: string, words: string | null) =>
    words === null ? nothing : html`<div><dt>${name}</dt><dd>${words}</dd></div>`;
  return html`<p class="task-batch">${[task.name, FACE_WORDS[task.face], formats.area(task.areaM2)].filter((words) => words !== '').join(' · ')}</p>
    <dl class="task-facts">
      ${fact('When', `${clock.day(task.startMinute)} ${clock.span(task.startMinute, task.endMinute)}`)}
      ${fact('Liquid', task.layFromMinute === null ? null : litres === null ? 'not known' : formats.volume(litres))}
      ${fact('Parts', batch.parts === '' ? batch.title : `${batch.parts} (${batch.title})`)}
      ${fact(allowedName(task), `${clock.moment(task.allowedFromMinute)} ${task.allowedToMinute === null ? 'or later' : `to ${clock.moment(task.allowedToMinute)}`}`)}
      ${fact('Touch-dry', task.touchDryMinute === null ? null : clock.moment(task.touchDryMinute))}
      ${fact('Dry to handle', task.handleDryMinute === null ? null : clock.moment(task.handleDryMinute))}
      ${fact('Air', air === null ? null : `${formats.figure(air.temperatureC, 'C')}, ${Math.round(air.humidityPercent)} % humidity`)}
      ${fact('State', STATE_WORDS[task.state])}
    </dl>
    <div class="task-why">
      ${whyThisTime(entry, named, clock).map((words) => html`<p>${words}</p>`)}
    </div>`;
}
