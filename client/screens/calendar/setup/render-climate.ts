import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ClimateRow } from '../../../../server/http/contract.ts';
import { focusRow } from '../../../fields/focus-row.ts';
import { addAct, removeAct } from '../../../fields/row-acts.ts';
import { addRow, saveField } from '../../../fields/save.ts';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../../fields/stack-table.ts';
import { asTyped, textInput } from '../../../fields/text-input.ts';
import { readOptionalNumber } from '../../../format/read-number.ts';
import { understood } from '../../../format/reading.ts';
import { actions } from '../../../state/store.ts';
import { chosenSetting } from '../../settings/setting-field.ts';
import { pasteClimate } from './paste-climate.ts';
import { setupPanel } from './render-setup.ts';
import { humiditySetting, readDegrees, temperatureSetting } from './setup-fields.ts';

/** Rows edited one by one; longer lists are pasted anew. */
const EDITED = 40;

/** The shop's air: the same always, one level by day and one by night, or as measured. */
export function renderClimate(book: ScreenBook): TemplateResult {
  const { climateKind } = book.settings;
  return setupPanel(
    'climate',
    'Air in the shop',
    'Cold stretches drying; damp stretches it for waterborne coats. Measure them in your own shop.',
    html`<div class="setup-grid">
        ${chosenSetting(book, 'climateKind', 'Given as', [
          { value: 'constant', text: 'the same at all hours' },
          { value: 'day-night', text: 'by day and by night' },
          { value: 'hourly', text: 'measured or forecast rows' },
        ])}
        ${temperatureSetting(book, 'dayC', climateKind === 'day-night' ? 'By day' : 'Temperature')}
        ${humiditySetting(book, 'dayHumidity', climateKind === 'day-night' ? 'Humidity by day' : 'Humidity')}
        ${
          climateKind !== 'day-night'
            ? nothing
            : html`${temperatureSetting(book, 'nightC', 'By night')} ${humiditySetting(book, 'nightHumidity', 'Humidity by night')}`
        }
      </div>
      ${climateKind === 'hourly' ? renderRows(book) : nothing}`,
  );
}

function renderRows(book: ScreenBook): TemplateResult {
  const { climateRows } = book.project.rows;
  return html`<div>
    <p class="aside-words">
      ${
        climateRows.length === 0
          ? 'No rows yet: the values above hold.'
          : `${climateRows.length} ${climateRows.length === 1 ? 'row' : 'rows'}, ${span(climateRows)}. Where there is no row, the values above hold.`
      }
    </p>
    ${
      climateRows.length === 0 || climateRows.length > EDITED
        ? html`<span data-list="climateRows" tabindex="-1"></span>`
        : stackTable(
            'Measured air',
            [['Date'], ['Time'], ['Temperature', 'number'], ['Humidity', 'number'], ['Remove', 'acts']],
            repeat(
              climateRows,
              ({ id }) => id,
              (row) => renderRow(book, row),
            ),
            { list: 'climateRows' },
          )
    }
    <div class="toolbar">
      ${climateRows.length > EDITED ? nothing : addAct('climateRows', 'Add row', () => void add(book))}
      <button type="button" class="button" @click=${() => pasteClimate(book)}>Paste or read rows…</button>
      ${
        climateRows.length === 0
          ? nothing
          : html`<button
              type="button"
              class="button plain"
              @click=${() =>
                void actions.change(
                  climateRows.map(({ id }) => ({ op: 'delete', table: 'climateRows', id })),
                  `remove ${climateRows.length} rows of measured air`,
                )}
            >
              Remove all rows
            </button>`
      }
    </div>
  </div>`;
}

function renderRow(book: ScreenBook, row: ClimateRow): TemplateResult {
  const { problems, settings, formats } = book;
  const at = (field: string) => ({ table: 'climateRows', id: row.id, field }) as const;
  const when = `${row.date} ${row.time}`.trim();
  return html`<tr role="row" data-row="climateRows/${row.id}">
    ${stackCell('Date', textInput({ place: at('date'), label: 'Date of a row', text: row.date, read: asTyped, save: saveField('climateRows', row.id, 'date'), problems, placeholder: '2026-12-12' }))}
    ${stackCell('Time', textInput({ place: at('time'), label: `Time, ${when}`, text: row.time, read: asTyped, save: saveField('climateRows', row.id, 'time'), problems, placeholder: 'all day' }))}
    ${stackCell(
      'Temperature',
      textInput<number | null>({
        place: at('temperatureC'),
        label: `Temperature, ${when}`,
        text: row.temperatureC === null ? '' : formats.figure(row.temperatureC, 'C'),
        read: (typed) => (typed.trim() === '' ? understood(null) : readDegrees(typed, settings.units)),
        save: saveField('climateRows', row.id, 'temperatureC'),
        problems,
        numeric: true,
        placeholder: 'not known',
      }),
      'number',
    )}
    ${stackCell(
      'Humidity',
      textInput<number | null>({
        place: at('humidityPercent'),
        label: `Humidity, ${when}`,
        text: row.humidityPercent === null ? '' : `${row.humidityPercent} %`,
        read: (typed) => readOptionalNumber(typed.replace(/%\s*$/, ''), { least: 1, most: 100 }),
        save: saveField('climateRows', row.id, 'humidityPercent'),
        problems,
        numeric: true,
        placeholder: 'day value',
      }),
      'number',
    )}
    ${stackCell('', removeAct('climateRows', row.id, `row ${when}`), 'acts')}
  </tr>`;
}

function span(rows: readonly ClimateRow[]): string {
  const dates = rows.map(({ date }) => date).sort();
  return dates[0] === dates.at(-1) ? `of ${dates[0]}` : `from ${dates[0]} to ${dates.at(-1)}`;
}

async function add({ project, settings }: ScreenBook): Promise<void> {
  const last = project.rows.climateRows.at(-1);
  const values = {
    date: last?.date ?? settings.startDate,
    time: '',
    temperatureC: last?.temperatureC ?? settings.dayC,
    humidityPercent: last?.humidityPercent ?? null,
  };
  focusRow('climateRows', await addRow('climateRows', values, 'add a row of measured air'));
}
