import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { removeAct } from '../../../fields/row-acts.ts';
import { saveField } from '../../../fields/save.ts';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../../fields/stack-table.ts';
import { asTyped, textInput } from '../../../fields/text-input.ts';
import { localText } from '../../../format/calendar-clock.ts';
import { actions } from '../../../state/store.ts';
import { datesBetween } from './dates-between.ts';
import { setupPanel } from './render-setup.ts';

/** Days without work, one by one or a range at a time. */
export function renderDaysOff(book: ScreenBook): TemplateResult {
  const { daysOff } = book.project.rows;
  return setupPanel(
    'days-off',
    'Days off',
    'No work on these, whatever the weekday. Coats go on drying.',
    html`<form class="days-off-add" @submit=${(event: SubmitEvent) => void addRange(event)}>
        <label class="field"><span>From</span><input type="date" name="from" required data-add="daysOff" /></label>
        <label class="field"><span>To</span><input type="date" name="to" /></label>
        <label class="field"><span>Why</span><input name="note" autocomplete="off" placeholder="holiday" /></label>
        <button class="button">Add</button>
      </form>
      ${
        daysOff.length === 0
          ? html`<p class="aside-words" data-list="daysOff" tabindex="-1">No day off.</p>`
          : stackTable(
              'Days off',
              [['Date'], ['Why', 'wide'], ['Remove', 'acts']],
              repeat(
                daysOff,
                ({ id }) => id,
                (row) => html`<tr role="row" data-row="daysOff/${row.id}">
                  ${stackCell('Date', textInput({ place: { table: 'daysOff', id: row.id, field: 'date' }, label: 'Day off', text: row.date, read: asTyped, save: saveField('daysOff', row.id, 'date'), problems: book.problems }))}
                  ${stackCell('Why', textInput({ place: { table: 'daysOff', id: row.id, field: 'note' }, label: `Why ${localText(row.date)} is off`, text: row.note, read: asTyped, save: saveField('daysOff', row.id, 'note'), problems: book.problems }), 'wide')}
                  ${stackCell('', removeAct('daysOff', row.id, `day off ${localText(row.date)}`), 'acts')}
                </tr>`,
              ),
              { list: 'daysOff' },
            )
      }`,
  );
}

async function addRange(event: SubmitEvent): Promise<void> {
  event.preventDefault();
  const form = event.currentTarget as HTMLFormElement;
  const data = new FormData(form);
  const from = String(data.get('from'));
  const dates = datesBetween(from, String(data.get('to')) || from);
  if (dates === null) {
    actions.say({
      kind: 'error',
      text: 'These days off end before they begin, or are more than a year.',
      wayOut: 'Correct the two dates.',
    });
    return;
  }
  const note = String(data.get('note')).trim();
  const answer = await actions.change(
    dates.map((date) => ({ op: 'insert', table: 'daysOff', values: { date, note } })),
    dates.length === 1 ? 'add a day off' : `add ${dates.length} days off`,
  );
  if (answer !== null) form.reset();
}
