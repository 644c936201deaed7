import { html, nothing, type TemplateResult } from 'lit-html';
import { barScale } from '../../drawing/bar-scale.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { figureButton } from '../../panels/figure-button.ts';
import { actions } from '../../state/store.ts';
import { CATEGORY_WORDS, unpricedWords } from './words.ts';

/** The planned cost: what is known of the total, and how it falls on categories. */
export function renderCost(book: ScreenBook): TemplateResult {
  const { formats, settings, project } = book;
  const { buy } = project.plan;
  const open = buy.unpricedLines ?? 0;
  const taxed = settings.taxPercent !== null;
  const field = taxed ? 'totalMinor' : 'netMinor';
  return html`<section class="panel cost" aria-labelledby="cost-title">
    <div class="cost-total">
      <h2 id="cost-title">Planned cost</h2>
      <p class="cost-sum">
        ${open > 0 ? html`<span>at least</span> ` : nothing}${figureButton(`buy/${field}`, formats.money(buy[field]), taxed ? 'Total with tax' : 'Total before tax')}
      </p>
      <p class="cost-words">
        ${
          taxed
            ? html`${figureButton('buy/netMinor', formats.money(buy.netMinor), 'Before tax')} and
              ${figureButton('buy/taxMinor', formats.money(buy.taxMinor), 'Tax')} tax at ${settings.taxPercent} %`
            : html`before tax; <button type="button" class="link" @click=${() => actions.goTo({ table: 'settings', id: null, field: 'taxPercent' })}>say the tax</button> to have it added`
        }
      </p>
      ${open > 0 ? html`<p class="chip warning">${unpricedWords(open)}</p>` : nothing}
    </div>
    ${renderCategories(book)}
  </section>`;
}

function renderCategories({ formats, project }: ScreenBook): TemplateResult {
  const categories = project.plan.buy.categories.filter(
    ({ planned, unpricedLines }) => (planned ?? 0) > 0 || (unpricedLines ?? 0) > 0,
  );
  const scale = barScale(Math.max(0, ...categories.map(({ planned }) => planned ?? 0)));
  return html`<table class="cost-bars" aria-label="Planned cost by category">
    <tbody>
      ${categories.map(
        ({ id, planned, unpricedLines }) => html`<tr>
          <th scope="row">${CATEGORY_WORDS[id]}</th>
          <td class="bar-cell">
            ${
              planned === null
                ? nothing
                : html`<svg aria-hidden="true"><rect width="${scale(planned)}%" height="100%" rx="2" /></svg>`
            }
            ${(unpricedLines ?? 0) > 0 ? html`<small>${planned === null ? '' : 'and '}${unpricedWords(unpricedLines ?? 0)}</small>` : nothing}
          </td>
          <td class="number">
            ${figureButton(`buy/categories/${id}/planned`, formats.money(planned), CATEGORY_WORDS[id])}
          </td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}
