import { html, type TemplateResult } from 'lit-html';
import { trimmedText } from '../../../server/planning/display/fixed-text.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { figureButton } from '../../panels/figure-button.ts';
import type { AirBook } from './air-book.ts';

/** Which vapours there are, and by which limits of whom they are judged. */
export function renderVapours({ formats }: ScreenBook, { plan }: AirBook): TemplateResult {
  return html`<section class="panel" aria-labelledby="air-vapours">
    <header><div><h2 id="air-vapours">The vapours and their limits</h2><p>Of several limits the strictest counts. Figures from a product's own data sheet, entered in the catalogue, stand in their place. Air per litre: what dilutes the vapour of a litre to a quarter of the explosive limit, by formula.</p></div></header>
    <div class="body flush">
      ${stackTable(
        'Vapours and their limits',
        [
          ['Vapour', 'wide'],
          ['Health limit', 'wide'],
          ['Lower explosive limit', 'wide'],
          ['Flash point', 'number'],
          ['Air per litre', 'number'],
        ],
        plan.substances.map(
          (one) => html`<tr role="row">
            ${stackCell('Vapour', one.name, 'lead')}
            ${stackCell('Health limit', limit(one.limitMgPerM3 === null ? null : `${trimmedText(one.limitMgPerM3, 0)} mg/m³`, one.limitSource))}
            ${stackCell(
              'Lower explosive limit',
              one.lelPercent === null
                ? html`<span class="unknown">unknown</span>${one.cautiousLelPercent === null ? '' : html`<small>stand-in ${one.cautiousLelPercent} %: ${one.cautiousSource}</small>`}`
                : limit(`${one.lelPercent} %`, one.lelSource),
            )}
            ${stackCell('Flash point', formats.figure(one.flashPointC, 'C'), 'number')}
            ${stackCell('Air per litre', figureButton(`air/substances/${encodeURIComponent(one.id)}/dilutionM3PerL`, formats.figure(one.dilutionM3PerL, 'm3')), 'number')}
          </tr>`,
        ),
        { extraClass: 'vapours' },
      )}
    </div>
  </section>`;
}

function limit(value: string | null, source: string): TemplateResult {
  return value === null
    ? html`<span class="unknown">unknown</span>`
    : html`${value}${source === '' ? '' : html`<small>${source}</small>`}`;
}
