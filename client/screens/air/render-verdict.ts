import { html, nothing, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { actions } from '../../state/store.ts';
import type { AirBook } from './air-book.ts';

const TONES = {
  'over-ceiling': 'error',
  'over-target': 'error',
  'over-health': 'error',
  'cannot-tell': 'unknown',
  'within-limits-entered': 'within',
  'no-coats': 'unknown',
} as const;

/** The answer in words, what is missing for it with the way there, and what would help. */
export function renderVerdict(book: ScreenBook, air: AirBook): TemplateResult {
  const { plan } = air;
  if (plan.verdict === 'no-coats' && plan.problems.length === 0) return renderNothing();
  return html`<section class="verdict ${TONES[plan.verdict]}" aria-labelledby="air-verdict">
    <div role="status"><h2 id="air-verdict">${plan.headline}</h2></div>
    ${plan.sentences.map((sentence) => html`<p>${sentence}</p>`)}
    ${renderWhen(air)} ${renderMissing(air)} ${renderSuggestions(book, air)}
  </section>`;
}

/** When it is worst. */
function renderWhen({ plan, clock, times }: AirBook): TemplateResult | typeof nothing {
  const { peakIndex, peakMinute } = plan.health;
  if (peakIndex === null || peakMinute === null || peakIndex === 0) return nothing;
  return html`<p>It is worst on ${clock.moment(peakMinute)}: ${times(peakIndex)} the health limit${plan.health.verdict === 'cannot-tell' ? ', by what is known' : ''}.</p>`;
}

function renderMissing({ plan }: AirBook): TemplateResult | typeof nothing {
  if (plan.problems.length === 0) return nothing;
  return html`<div class="missing">
    <h3>What is not known</h3>
    <ul>
      ${plan.problems.map(
        ({ message, wayOut, at }) => html`<li>
          <span>${message} <small>${wayOut}</small></span>
          <button type="button" class="button" @click=${() => actions.goTo(at)}>Enter it</button>
        </li>`,
      )}
    </ul>
  </div>`;
}

function renderSuggestions(
  _: ScreenBook,
  { plan, times, percent }: AirBook,
): TemplateResult | typeof nothing {
  if (plan.suggestions.length === 0) return nothing;
  return html`<div class="suggestions">
    <h3>Any one of these would do</h3>
    <ul>
      ${plan.suggestions.map(
        ({ text, peakIndex, peakPercent, cautiousFire }) => html`<li>
          ${text}
          <small>Reckoned anew with it: at most ${times(peakIndex)} the health limit and ${percent(peakPercent)} of the explosive limit${cautiousFire ? ' (by the lowest value found elsewhere)' : ''}.</small>
        </li>`,
      )}
    </ul>
  </div>`;
}

function renderNothing(): TemplateResult {
  return html`<div class="empty">
    <h2>Nothing to finish yet</h2>
    <p>Give the parts a finish recipe on the part list. What its coats give off is then shown here.</p>
    <button type="button" class="button primary" @click=${() => actions.show('parts')}>Go to the parts</button>
  </div>`;
}
