import { html, type TemplateResult } from 'lit-html';
import { AIR_CAUTIONS } from '../../../server/planning/display/air-cautions.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import type { AirBook } from './air-book.ts';

/** Beside every verdict, and before there is one. */
export function renderAirCautions(_: AirBook | null): TemplateResult {
  return html`<aside class="air-cautions" aria-labelledby="air-cautions">
    <h2 id="air-cautions">${screenIcon('caution')} Whatever the figures say</h2>
    <ul>${AIR_CAUTIONS.map((caution) => html`<li>${caution}</li>`)}</ul>
  </aside>`;
}
