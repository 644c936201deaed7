import { html, nothing, render, type TemplateResult } from 'lit-html';
import { readListFile } from '../../../exchange/read-list-file.ts';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { openDialog } from '../../../shell/open-dialog.ts';
import { actions, getState } from '../../../state/store.ts';
import { type ReadClimate, readClimate } from './read-climate.ts';

/** Rows shown of what was read: its beginning. */
const SHOWN = 6;

/** Takes pasted rows or a CSV file of measured air, and shows what of it was understood before it is taken. */
export function pasteClimate(book: ScreenBook): void {
  openDialog(
    'Paste measured air',
    (close) => html`<form class="body" @submit=${(event: SubmitEvent) => void take(event, book, close)}>
      <h2>Paste measured air</h2>
      <p>
        One row per hour or day: date, time, temperature, humidity, as <code>2026-12-12 14:00; 18.5; 55</code>. Tabs, semicolons or commas
        between; time and humidity may be left out.
      </p>
      <label class="field"><span>Rows</span><textarea name="rows" class="paste-text" spellcheck="false" @input=${(event: Event) => preview(event, book)}></textarea></label>
      <label class="field"><span>Or a CSV file</span><input type="file" accept=".csv,.txt,text/csv,text/plain" @change=${(event: Event) => void readFile(event)} /></label>
      <div class="paste-read" role="status"></div>
      <label class="check"><input type="checkbox" name="replace" checked /> Replace the rows there are</label>
      <div class="actions">
        <button type="button" class="button" @click=${close}>Cancel</button>
        <button class="button primary">Take the rows</button>
      </div>
    </form>`,
  );
}

function preview(event: Event, { settings, formats }: ScreenBook): void {
  const area = event.currentTarget as HTMLTextAreaElement;
  const place = area.form?.querySelector<HTMLElement>('.paste-read');
  if (place === null || place === undefined) return;
  const read = readClimate(area.value, settings.units);
  render(area.value.trim() === '' ? nothing : previewOf(read, (c) => formats.figure(c, 'C')), place);
}

function previewOf({ rows, refusals }: ReadClimate, degrees: (c: number) => string): TemplateResult {
  return html`<p><b>${rows.length} ${rows.length === 1 ? 'row' : 'rows'} read</b>${refusals.length === 0 ? '.' : `, ${refusals.length} not.`}</p>
    ${
      refusals.length === 0
        ? nothing
        : html`<ul class="said-list">${refusals.slice(0, SHOWN).map(({ line, message }) => html`<li class="said error">Line ${line}: ${message}</li>`)}
          ${refusals.length > SHOWN ? html`<li class="said error">and ${refusals.length - SHOWN} more</li>` : nothing}</ul>`
    }
    ${
      rows.length === 0
        ? nothing
        : html`<div class="paste-preview"><table class="table" aria-label="What was read">
          <thead><tr><th scope="col">Date</th><th scope="col">Time</th><th scope="col" class="number">Temperature</th><th scope="col" class="number">Humidity</th></tr></thead>
          <tbody>${rows.slice(0, SHOWN).map((row) => html`<tr><td>${row.date}</td><td>${row.time === '' ? 'all day' : row.time}</td><td class="number">${degrees(row.temperatureC)}</td><td class="number">${row.humidityPercent === null ? 'day value' : `${row.humidityPercent} %`}</td></tr>`)}</tbody>
        </table></div>`
    }`;
}

async function readFile(event: Event): Promise<void> {
  const input = event.currentTarget as HTMLInputElement;
  const file = input.files?.[0];
  const area = input.form?.querySelector('textarea');
  if (file === undefined || area === null || area === undefined) return;
  const source = await readListFile(file);
  if (source.kind === 'text') {
    area.value = source.text;
    area.dispatchEvent(new Event('input'));
  } else
    actions.say({
      kind: 'error',
      text: 'This file is not text.',
      wayOut: 'Save the sheet as CSV, or copy its rows and paste them.',
    });
}

async function take(event: SubmitEvent, { settings }: ScreenBook, close: () => void): Promise<void> {
  event.preventDefault();
  const data = new FormData(event.currentTarget as HTMLFormElement);
  const { rows } = readClimate(String(data.get('rows')), settings.units);
  const before = getState().project?.rows.climateRows ?? [];
  if (rows.length === 0) {
    actions.say({ kind: 'error', text: 'No row could be read.', wayOut: 'Paste rows as the example shows.' });
    return;
  }
  const answer = await actions.change(
    [
      ...(data.get('replace') === null
        ? []
        : before.map(({ id }) => ({ op: 'delete', table: 'climateRows', id }) as const)),
      ...rows.map((row) => ({ op: 'insert', table: 'climateRows', values: { ...row } }) as const),
      { op: 'settings', values: { climateKind: 'hourly' } },
    ],
    `take ${rows.length} rows of measured air`,
  );
  if (answer !== null) close();
}
