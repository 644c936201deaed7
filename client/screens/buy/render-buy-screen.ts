import '../../fields/fields.css';
import './buy.css';
import './paper-buy.ts';
import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { arrive } from '../../fields/arrive.ts';
import { screenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import type { AppState } from '../../state/store.ts';
import { groupLines } from './group-lines.ts';
import { renderCost } from './render-cost.ts';
import { renderExtras } from './render-extras.ts';
import { renderOnHand } from './render-on-hand.ts';
import { renderOrders } from './render-orders.ts';
import { renderSubstitutes } from './render-substitutes.ts';
import { renderSupplier } from './render-supplier.ts';

/** What to order, by supplier, in whole packs; what it costs; lines of one's own; what is on the shelf. */
export function renderBuyScreen(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  arrive(state);
  const { lines } = book.project.plan.buy;
  return html`<section class="page buy-screen" aria-labelledby="buy-title">
    <div class="page-head">
      <div>
        <h1 id="buy-title">Buy<span class="print-only">: ${book.settings.name}</span></h1>
        <p>Whole packs at least cost for what the parts, the banding and the finish need, less what is on hand.</p>
      </div>
      <button type="button" class="button" @click=${() => window.print()}>${screenIcon('print')} Print</button>
    </div>
    ${renderCost(book)}
    ${
      lines.length === 0
        ? html`<div class="empty">
          <h2>Nothing to buy yet</h2>
          <p>The list fills by itself from the parts, their edges and their finish. Hinges, screws or delivery are added below.</p>
        </div>`
        : repeat(
            groupLines(lines),
            ({ supplierId }) => supplierId,
            (group) => renderSupplier(book, group),
          )
    }
    ${renderOrders(book)} ${renderExtras(book)} ${renderSubstitutes(book)} ${renderOnHand(book)}
  </section>`;
}
