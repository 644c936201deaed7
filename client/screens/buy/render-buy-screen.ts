import '../../fields/fields.css';
import './buy.css';
import './paper-buy.ts';
import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { BuyingAnswer } from '../../../server/http/contract.ts';
import { answerProblems } from '../../fields/answer-problems.ts';
import { arrive } from '../../fields/arrive.ts';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { type AppState, actions } from '../../state/store.ts';
import { renderBasket } from './render-basket.ts';
import { renderChoice } from './render-choice.ts';
import { renderCost } from './render-cost.ts';
import { renderCoverages } from './render-coverages.ts';
import { renderExtras } from './render-extras.ts';
import { renderOnHand } from './render-on-hand.ts';
import { renderOrders } from './render-orders.ts';
import { renderSettled } from './render-settled.ts';
import { renderStock } from './render-stock.ts';
import { renderStockUses } from './render-stock-uses.ts';
import { renderSubstitutes } from './render-substitutes.ts';
import { standingWords } from './standing-words.ts';

/** What to order, from whom and until when; what is on its way; what is in stock. */
export function renderBuyScreen(state: AppState): TemplateResult {
  const plain = screenBook(state);
  if (plain === null) return html``;
  actions.wantAnswer('buying');
  arrive(state);
  const { buying } = state;
  const book = buying === null ? plain : { ...plain, problems: [...plain.problems, ...buying.problems] };
  return html`<section class="page buy-screen" aria-labelledby="buy-title" data-current=${buying?.revision === book.project.revision ? 'yes' : 'no'}>
    <div class="page-head">
      <div>
        <h1 id="buy-title">Buy<span class="print-only">: ${book.settings.name}</span></h1>
        <p role="status">${buying === null ? 'The buy list is being drawn up.' : standingWords(buying)}</p>
      </div>
      <button type="button" class="button" @click=${() => window.print()}>${screenIcon('print')} Print</button>
    </div>
    ${buying === null ? nothing : answerProblems(buying.problems)}
    ${renderCost(book)} ${buying === null ? nothing : renderBuying(book, buying)} ${renderExtras(book)}
    ${renderSubstitutes(book)}
  </section>`;
}

function renderBuying(book: ScreenBook, buying: BuyingAnswer): TemplateResult {
  const lines = new Map(buying.lines.map((line) => [line.id, line]));
  const inBasket = new Set(buying.baskets.flatMap(({ lineIds }) => lineIds));
  return html`${
    buying.lines.length === 0
      ? html`<div class="empty">
        <h2>Nothing to buy yet</h2>
        <p>The list fills by itself from the parts, their edges and their finish. Hinges, screws or delivery are added below.</p>
      </div>`
      : nothing
  }
  ${repeat(
    buying.baskets,
    ({ id }) => id,
    (basket) =>
      renderBasket(
        book,
        basket,
        basket.lineIds.flatMap((id) => lines.get(id) ?? []),
      ),
  )}
  ${renderChoice(book, buying)}
  ${renderSettled(
    book,
    buying.lines.filter(({ id }) => !inBasket.has(id)),
  )}
  ${renderOrders(book, buying)} ${renderStock(book, buying)} ${renderOnHand(book, buying)} ${renderStockUses(book)}
  ${renderCoverages(book, buying)}`;
}
