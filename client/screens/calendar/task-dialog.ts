import { html, nothing, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { readAmount } from '../../format/read-amount.ts';
import { type Reading, understood } from '../../format/reading.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import { actions } from '../../state/store.ts';
import type { CalendarBook, TaskEntry } from './calendar-book.ts';
import { renderFacts } from './render-facts.ts';
import { hideTaskCard } from './task-card.ts';
import { pinTask, tickTask, unpinTask, untickTask } from './task-changes.ts';
import { isOpen } from './task-words.ts';

/** Opens one task: what is known of it, a start to pin, and what really happened. */
export function openTask(book: ScreenBook, calendar: CalendarBook, entry: TaskEntry): void {
  hideTaskCard();
  openDialog(
    `${entry.title}, ${entry.batch.title}`,
    (close) => html`<div class="body task-dialog">
      <h2>${entry.title}</h2>
      ${renderFacts(book, calendar, entry)}
      ${isOpen(entry.task) ? renderPin(calendar, entry, close) : nothing} ${renderDone(book, calendar, entry, close)}
      <div class="actions"><button type="button" class="button" @click=${close}>Close</button></div>
    </div>`,
  );
}

function renderPin({ clock }: CalendarBook, entry: TaskEntry, close: () => void): TemplateResult {
  const { task, pin } = entry;
  return html`<form
    class="task-form"
    aria-label="Pin the start"
    @submit=${(event: SubmitEvent) => {
      const start = text(event, 'start');
      void pinTask(entry, start).then((taken) => {
        if (taken) close();
      });
    }}
  >
    <h3>${pin === null ? 'Start at a time of your own' : 'Pinned to this start'}</h3>
    <p>The rest is planned around it.</p>
    <div class="task-fields">
      <label class="field"><span>Start</span
        ><input name="start" type="datetime-local" required .value=${pin?.start ?? clock.local(task.startMinute)}
      /></label>
      <button class="button primary">${pin === null ? 'Pin' : 'Move the pin'}</button>
      ${
        pin === null
          ? nothing
          : html`<button
              type="button"
              class="button"
              @click=${() =>
                void unpinTask(entry).then((taken) => {
                  if (taken) close();
                })}
            >
              Unpin
            </button>`
      }
    </div>
  </form>`;
}

function renderDone(
  book: ScreenBook,
  { clock }: CalendarBook,
  entry: TaskEntry,
  close: () => void,
): TemplateResult {
  const { task, done, litres } = entry;
  const coat = task.layFromMinute !== null;
  const start = done?.start ?? clock.local(task.layFromMinute ?? task.startMinute);
  const end = done?.end ?? clock.local(task.layToMinute ?? task.endMinute);
  return html`<form
    class="task-form"
    aria-label="Mark as done"
    @submit=${(event: SubmitEvent) => void tick(event, book, entry, close)}
  >
    <h3>${done === null ? 'Done?' : 'Done'}</h3>
    <p>${coat ? 'From the first to the last stroke, as it really was.' : 'As it really was.'} The rest is planned anew from it.</p>
    <div class="task-fields">
      <label class="field"><span>Began</span><input name="start" type="datetime-local" required .value=${start} /></label>
      <label class="field"><span>Ended</span><input name="end" type="datetime-local" required .value=${end} /></label>
      ${
        coat
          ? html`<label class="field"
              ><span>Liquid used</span
              ><input name="litres" autocomplete="off" placeholder=${litres === null ? 'not measured' : `about ${book.formats.volume(litres)}`} .value=${done === null || done.litres === null ? '' : book.formats.volume(done.litres)}
            /></label>`
          : nothing
      }
      <button class="button ${done === null && !isOpen(task) ? 'primary' : ''}">${done === null ? 'Mark as done' : 'Save'}</button>
      ${
        done === null
          ? nothing
          : html`<button
              type="button"
              class="button"
              @click=${() =>
                void untickTask(entry).then((taken) => {
                  if (taken) close();
                })}
            >
              Not done after all
            </button>`
      }
    </div>
    <p class="fault" role="alert" hidden></p>
  </form>`;
}

async function tick(
  event: SubmitEvent,
  { settings }: ScreenBook,
  entry: TaskEntry,
  close: () => void,
): Promise<void> {
  const form = event.currentTarget as HTMLFormElement;
  const [start, end, used] = [text(event, 'start'), text(event, 'end'), text(event, 'litres')];
  const litres = readUsed(used, settings.units);
  const fault = !litres.ok ? litres.message : end < start ? 'It cannot have ended before it began.' : null;
  const place = form.querySelector<HTMLElement>('.fault');
  if (place !== null) {
    place.hidden = fault === null;
    place.textContent = fault;
  }
  if (fault !== null || !litres.ok) return;
  if (await tickTask(entry, { start, end, litres: litres.value })) {
    close();
    actions.say({ kind: 'info', text: `${entry.title} is done. The rest is being planned anew.` });
  }
}

/** Nothing typed: it was not measured. */
function readUsed(typed: string, units: ScreenBook['settings']['units']): Reading<number | null> {
  return typed === '' ? understood(null) : readAmount(typed, 'L', units);
}

/** A value of the form that is being sent; the page itself is not to be left. */
function text(event: SubmitEvent, name: string): string {
  event.preventDefault();
  return String(new FormData(event.currentTarget as HTMLFormElement).get(name) ?? '').trim();
}
