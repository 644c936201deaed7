import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ShopHoursRow } from '../../../../server/http/contract.ts';
import { focusRow } from '../../../fields/focus-row.ts';
import { removeAct } from '../../../fields/row-acts.ts';
import { addRow, saveField } from '../../../fields/save.ts';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { asTyped, textInput } from '../../../fields/text-input.ts';
import { icon } from '../../../shell/icons.ts';
import { setupPanel } from './render-setup.ts';

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
/** What a first window of a day begins with, to be changed. */
const FIRST = { from: '18:00', to: '21:00' };

/** When there are hands in the shop: any number of windows on each weekday. */
export function renderHours(book: ScreenBook): TemplateResult {
  return setupPanel(
    'hours',
    'Working hours',
    'When someone can be in the shop. A day may have several windows.',
    html`<div class="week" data-list="shopHours" tabindex="-1">${WEEKDAYS.map((name, weekday) => renderDay(book, name, weekday))}</div>`,
    true,
  );
}

function renderDay(book: ScreenBook, name: string, weekday: number): TemplateResult {
  const windows = book.project.rows.shopHours.filter((row) => row.weekday === weekday);
  const last = windows.at(-1);
  return html`<div>
    <span>${name}</span>
    ${
      windows.length === 0
        ? html`<span class="week-none">closed</span>`
        : html`<ul class="week-windows">
          ${repeat(
            windows,
            ({ id }) => id,
            (row) => html`<li data-row="shopHours/${row.id}">
              ${time(book, row, 'from', `${name}, from`)} <span aria-hidden="true">to</span> ${time(book, row, 'to', `${name}, to`)}
              ${removeAct('shopHours', row.id, `window of ${name}`)}
            </li>`,
          )}
        </ul>`
    }
    <button
      type="button"
      class="button plain icon"
      data-add=${windows.length === 0 ? 'shopHours' : ''}
      aria-label="Add a window on ${name}"
      title="Add a window"
      @click=${async () =>
        focusRow(
          'shopHours',
          await addRow(
            'shopHours',
            { weekday, ...(last === undefined ? FIRST : { from: last.to, to: last.to }) },
            `add a window on ${name}`,
          ),
        )}
    >
      ${icon('plus')}
    </button>
  </div>`;
}

function time(
  { problems }: ScreenBook,
  row: ShopHoursRow,
  field: 'from' | 'to',
  label: string,
): TemplateResult {
  return textInput({
    place: { table: 'shopHours', id: row.id, field },
    label,
    text: row[field],
    read: asTyped,
    save: saveField('shopHours', row.id, field),
    problems,
  });
}
