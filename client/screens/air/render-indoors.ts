import { html, nothing, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { figureButton } from '../../panels/figure-button.ts';
import type { AirBook } from './air-book.ts';

/** When the piece may come indoors: a range of low confidence, beside the advice that does not agree. */
export function renderIndoors({ formats }: ScreenBook, { plan, clock }: AirBook): TemplateResult {
  const { earliestMinute, latestMinute, earliestWait, latestWait, advice, missing } = plan.indoors;
  const known = earliestMinute !== null && latestMinute !== null;
  return html`<section class="panel" aria-labelledby="air-indoors">
    <header><div><h2 id="air-indoors">When the piece may come indoors</h2><p>Low confidence: published advice runs from a day to months. Your nose and the label come first.</p></div></header>
    <div class="body">
      ${
        known
          ? html`<p class="indoors-range"><b>Between ${clock.day(earliestMinute)} and ${clock.day(latestMinute)}</b>: ${figureButton('air/indoors/earliestWait', formats.figure(earliestWait, 'min'), 'Shortest wait')} to ${figureButton('air/indoors/latestWait', formats.figure(latestWait, 'min'), 'Longest wait')} after the last coat.</p>`
          : html`<p class="indoors-range"><b>Not known.</b> The curing time of the last coat is missing${missing.length === 0 ? '' : `: ${missing.join(', ')}`}. Enter it from the label in the catalogue.</p>`
      }
      ${
        known && missing.length > 0
          ? html`<p class="aside-words">The curing time of ${missing.join(', ')} is not known; where other coats cover it, it is taken to be sealed in by them. Where it stays on the surface, the wait may be longer.</p>`
          : nothing
      }
      ${stackTable(
        'Advice on when a coat has stopped giving off vapour',
        [
          ['About', 'wide'],
          ['It says', 'wide'],
          ['Source', 'wide'],
        ],
        advice.map(
          ({ what, says, source }) => html`<tr role="row">
            ${stackCell('About', what, 'lead')} ${stackCell('It says', says)} ${stackCell('Source', html`<small>${source}</small>`)}
          </tr>`,
        ),
      )}
      <p class="aside-words">These do not agree. They are shown side by side and not averaged; for a crib or a closed drawer go by the longest.</p>
    </div>
  </section>`;
}
