import { html, nothing, type TemplateResult } from 'lit-html';
import type { LedgerAnswer } from '../../../server/http/contract.ts';
import { barScale } from '../../drawing/bar-scale.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { comparisonSettings } from './comparison-settings.ts';

type Amount =
  | 'forecast'
  | 'labour'
  | 'forecastWithLabour'
  | 'readyMade'
  | 'saved'
  | 'savedWithLabour'
  | 'perFinishM2';

const ROWS = [
  ['forecast', 'Built: materials'],
  ['labour', 'Own hours at your rate'],
  ['forecastWithLabour', 'Built, with own hours'],
  ['readyMade', 'Ready made'],
] as const satisfies readonly (readonly [Amount, string])[];

/** Is it worth building? The forecast beside a ready-made price, without and with one's own hours. */
export function renderComparison(book: ScreenBook, ledger: LedgerAnswer): TemplateResult {
  const { formats } = book;
  const scale = barScale(Math.max(0, ...ROWS.map(([field]) => ledger[field].value ?? 0)));
  const number = (field: Amount, name: string) => heldFigure(formats, `ledger/${field}`, ledger[field], name);
  return html`<section class="panel" aria-labelledby="comparison-title">
    <header>
      <div>
        <h2 id="comparison-title">Build it or buy it</h2>
        <p>The forecast beside the price of the same piece ready made.</p>
      </div>
    </header>
    <div class="body comparison">
      ${comparisonSettings(book)}
      <table class="cost-bars" aria-label="Built and ready made">
        <tbody>
          ${ROWS.map(
            ([field, name]) => html`<tr>
              <th scope="row">${name}</th>
              <td class="bar-cell">
                ${
                  ledger[field].value === null
                    ? nothing
                    : html`<svg aria-hidden="true"><rect class=${field === 'readyMade' ? 'ready-made' : ''} width="${scale(ledger[field].value)}%" height="100%" rx="2" /></svg>`
                }
              </td>
              <td class="number">${number(field, name)}</td>
            </tr>`,
          )}
        </tbody>
      </table>
      <dl class="stats">
        <div class="stat"><dt>Saved by building</dt><dd>${number('saved', 'Saved by building')}</dd></div>
        <div class="stat">
          <dt>Saved, hours counted</dt>
          <dd>${number('savedWithLabour', 'Saved, own hours counted')}</dd>
        </div>
        <div class="stat">
          <dt>Per finished m²</dt>
          <dd>${number('perFinishM2', 'Cost of a finished square metre')}</dd>
        </div>
      </dl>
    </div>
  </section>`;
}
