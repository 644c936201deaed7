import { html, nothing, type TemplateResult } from 'lit-html';
import type { ImportPreview } from '../../server/http/contract.ts';
import { fieldChoices, projectUnitWords, unitChoices } from './import-choices.ts';
import type { ImportActions } from './import-draft.ts';
import { answered } from './render-questions.ts';
import { renderSelect } from './render-select.ts';
import { type ImportColumn, setColumnField } from './set-column.ts';

/** Rows of the source shown below the choices. */
const ROWS_SHOWN = 3;
/** Characters of a row repeated where the heading row is chosen. */
const ROW_WORDS = 48;
const SIZES: readonly ImportColumn['field'][] = ['length', 'width', 'size', 'thickness'];

/** What each column of the list is, above the first rows of the list as they stand. */
export function renderColumns(preview: ImportPreview, acts: ImportActions): TemplateResult | typeof nothing {
  const { columns, headingRow, sample, questions } = preview;
  if (preview.split === 'lines' || columns.length < 2) return nothing;
  const body = sample.slice(headingRow === null ? 0 : headingRow + 1).slice(0, ROWS_SHOWN);
  const wanted = questions.some(({ kind }) => kind === 'columns');
  return html`<details class="import-columns" ?open=${wanted || acts.draft().answers.columns !== undefined}>
    <summary>Columns: ${columns.filter(({ field }) => field !== 'ignore').length} of ${columns.length} taken</summary>
    <label class="field import-heading-row">
      <span>The headings are in</span>
      ${renderSelect(headingRow === null ? '' : String(headingRow), headingChoices(preview), (value) => {
        const { columns: _columns, ...answers } = acts.draft().answers;
        void acts.answer({ ...answers, headingRow: value === '' ? null : Number(value) });
      })}
    </label>
    <div class="import-scroll" role="region" aria-label="Columns of the list" tabindex="0">
      <table class="table import-mapping">
        <thead>
          <tr>
            ${columns.map((column, index) => html`<th scope="col">${column.heading === '' ? `Column ${index + 1}` : column.heading}</th>`)}
          </tr>
        </thead>
        <tbody>
          <tr>
            ${columns.map((column, index) => html`<td>${renderColumn(column, index, preview, acts)}</td>`)}
          </tr>
          ${body.map(({ cells }) => html`<tr class="import-raw">${columns.map((_column, index) => html`<td>${cells[index] ?? ''}</td>`)}</tr>`)}
        </tbody>
      </table>
    </div>
  </details>`;
}

function renderColumn(
  column: ImportColumn,
  index: number,
  { columns, sample }: ImportPreview,
  acts: ImportActions,
): TemplateResult {
  const name = column.heading === '' ? `column ${index + 1}` : `“${column.heading}”`;
  const change = (patch: Partial<ImportColumn>): void =>
    void acts.answer({
      columns: answered(columns.map((one, at) => (at === index ? { ...one, ...patch } : one))),
    });
  const commas = column.decimalComma || sample.some(({ cells }) => /\d,\d/.test(cells[index] ?? ''));
  const isSize = SIZES.includes(column.field);
  return html`<div class="import-column">
    ${renderSelect(
      column.field,
      fieldChoices(),
      (value) =>
        void acts.answer({
          columns: answered(setColumnField(columns, index, value as ImportColumn['field'])),
        }),
      `What is ${name}?`,
    )}
    ${
      isSize
        ? renderSelect(
            column.unit ?? '',
            unitChoices(acts.draft().answers.bareUnit == null ? projectUnitWords() : 'as answered above'),
            (value) => change({ unit: value === '' ? null : (value as ImportColumn['unit']) }),
            `Unit of plain numbers in ${name}`,
          )
        : nothing
    }
    ${
      isSize && commas
        ? html`<label class="check"
            ><input type="checkbox" .checked=${column.decimalComma} @change=${(event: Event) => change({ decimalComma: (event.currentTarget as HTMLInputElement).checked })} />
            comma is the decimal mark</label
          >`
        : nothing
    }
  </div>`;
}

function headingChoices({
  sample,
}: ImportPreview): readonly { readonly value: string; readonly text: string }[] {
  return [
    { value: '', text: 'no row' },
    ...sample.map(({ line, cells }, index) => {
      const words = cells.filter((cell) => cell !== '').join(' · ');
      const short = words.length > ROW_WORDS ? `${words.slice(0, ROW_WORDS)}…` : words;
      return { value: String(index), text: `row ${line}: ${short}` };
    }),
  ];
}
