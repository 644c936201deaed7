import '../../fields/fields.css';
import './quotes.css';
import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { arrive } from '../../fields/arrive.ts';
import { addAct } from '../../fields/row-acts.ts';
import { screenBook } from '../../fields/screen-book.ts';
import type { AppState } from '../../state/store.ts';
import { addQuote } from './new-quote.ts';
import { renderQuote } from './render-quote.ts';

/** What customers are asked for the piece. */
export function renderQuotesScreen(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  arrive(state);
  const { quotes } = book.project.rows;
  return html`<section class="page quotes-screen" aria-labelledby="quotes-title">
    <div class="page-head">
      <div>
        <h1 id="quotes-title">Quotes</h1>
        <p>What you ask a customer for this piece. The printed sheet shows the price, never what it costs you.</p>
      </div>
      <div class="page-acts">${addAct('quotes', 'Add quote', () => void addQuote(book))}</div>
    </div>
    ${
      quotes.length === 0
        ? html`<div class="empty" data-list="quotes" tabindex="-1">
          <h2>No quote yet</h2>
          <p>A quote takes the materials from the buy list, adds markup, hours and tax, and makes a sheet to hand over.</p>
        </div>`
        : repeat(
            quotes,
            ({ id }) => id,
            (quote, index) => renderQuote(book, quote, index + 1),
          )
    }
  </section>`;
}
