import { html, nothing, type TemplateResult } from 'lit-html';
import { TURNED_PATH } from '../../drawing/layout-drawing.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { cuttingListOf } from './cutting-list.ts';
import { printCutting } from './print-cutting.ts';

/** Above all layouts: how much of the plan is cut, paper to take along, and what the marks of the drawings mean. */
export function layoutsHead(book: ScreenBook): TemplateResult | typeof nothing {
  const { materials } = book.project.plan;
  if (!materials.some(({ layouts }) => layouts.length > 0)) return nothing;
  const list = cuttingListOf(book.project);
  const all = list?.layouts.reduce((sum, { parts, sheets }) => sum + parts.length * sheets, 0) ?? 0;
  const done = list?.layouts.reduce((sum, one) => sum + one.done.length, 0) ?? 0;
  const elsewhere = list?.elsewhere ?? 0;
  return html`<div class="layouts-head">
    ${
      list === null
        ? nothing
        : html`<p class="cut-progress">
            <progress aria-label="Pieces cut" max=${all} value=${done}></progress>
            <span><b>${done} of ${all}</b> cut</span>
            ${elsewhere === 0 ? nothing : html`<span class="elsewhere">${elsewhere} more ticked on layouts this plan no longer has</span>`}
          </p>`
    }
    <div class="paper-buttons">
      <button type="button" class="button" @click=${() => printCutting('sheets')}>
        ${screenIcon('print')} Print sheets
      </button>
      <button type="button" class="button" @click=${() => printCutting('labels')}>
        ${screenIcon('print')} Print labels
      </button>
    </div>
    <ul class="drawing-key" aria-label="What the marks of the drawings mean">
      <li><svg viewBox="0 0 18 18" aria-hidden="true"><circle class="key-cut" cx="9" cy="9" r="7.5" /></svg> saw cut, by its number</li>
      <li><svg viewBox="0 0 18 18" aria-hidden="true"><path class="key-grain" d="M1 5h7m3 0h6M1 9h3m3 0h9M1 13h9m3 0h4" /></svg> grain</li>
      <li><svg viewBox="-5 -4 18 18" aria-hidden="true"><path class="key-turned" d=${TURNED_PATH} /></svg> turned</li>
      <li><svg viewBox="0 0 18 18" aria-hidden="true"><rect class="key-offcut" x="1" y="3" width="16" height="12" /></svg> offcut</li>
      <li><svg viewBox="0 0 18 18" aria-hidden="true"><rect class="key-trim" x="1" y="2" width="16" height="14" /><rect class="key-inside" x="4" y="5" width="10" height="8" /></svg> trim</li>
      <li><svg viewBox="0 0 18 18" aria-hidden="true"><rect class="key-done" x="1" y="3" width="16" height="12" /></svg> ticked as cut</li>
    </ul>
  </div>`;
}
