import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { WorkHoursRow } from '../../../server/http/contract.ts';
import { dateInput } from '../../fields/date-input.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { projectToday } from '../../fields/project-today.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { addRow, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { readNumber } from '../../format/read-number.ts';

/** Most hours of one entry: what the server takes. */
const MOST_HOURS = 100_000;

/** Own hours at work, day by day. */
export function renderHours(book: ScreenBook): TemplateResult {
  const { workHours } = book.project.rows;
  return html`<section class="panel no-print" aria-labelledby="hours-title">
    <header>
      <div>
        <h2 id="hours-title">Own hours</h2>
        <p>They count at your rate in the comparison, never in what was paid.</p>
      </div>
      ${addAct('workHours', 'Add hours', () => void add())}
    </header>
    <div class="body flush">
      ${
        workHours.length === 0
          ? html`<p class="nothing-yet" data-list="workHours" tabindex="-1">No hours noted yet.</p>`
          : stackTable(
              'Own hours',
              [['Date'], ['Hours', 'number'], ['Note', 'wide'], ['Remove', 'acts']],
              repeat(
                workHours,
                ({ id }) => id,
                (row) => hoursRow(book, row),
              ),
              { list: 'workHours', extraClass: 'hours-table' },
            )
      }
    </div>
  </section>`;
}

function hoursRow({ problems }: ScreenBook, row: WorkHoursRow): TemplateResult {
  const place = (field: string) => ({ table: 'workHours', id: row.id, field }) as const;
  return html`<tr role="row" data-row="workHours/${row.id}">
    ${stackCell('Date', dateInput({ place: place('date'), label: 'Day of work', value: row.date, save: saveField('workHours', row.id, 'date'), problems }))}
    ${stackCell(
      'Hours',
      textInput<number>({
        place: place('hours'),
        label: `Hours on ${row.date}`,
        text: String(row.hours),
        read: (typed) => readNumber(typed.replace(/\s*h$/i, ''), { least: 0, most: MOST_HOURS }),
        save: saveField('workHours', row.id, 'hours'),
        problems,
        numeric: true,
      }),
      'number',
    )}
    ${stackCell(
      'Note',
      textInput<string>({
        place: place('note'),
        label: `What was done on ${row.date}`,
        text: row.note,
        placeholder: 'what was done',
        read: asTyped,
        save: saveField('workHours', row.id, 'note'),
        problems,
      }),
      'wide',
    )}
    ${stackCell('', removeAct('workHours', row.id, `the hours of ${row.date}`), 'acts')}
  </tr>`;
}

async function add(): Promise<void> {
  focusRow('workHours', await addRow('workHours', { date: projectToday(), hours: 1 }, 'add hours'));
}
