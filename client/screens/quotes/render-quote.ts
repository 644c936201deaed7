import { html, nothing, type TemplateResult } from 'lit-html';
import type { QuoteAnswer, QuoteRow } from '../../../server/http/contract.ts';
import type { CustomerSheet } from '../../../server/planning/ledger/ledger-plan.ts';
import { removeAct } from '../../fields/row-acts.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { figureButton } from '../../panels/figure-button.ts';
import { wantQuote } from '../../state/quote-answers.ts';
import { dateText } from '../ledger/day-text.ts';
import { customerSheet } from './customer-sheet.ts';
import { printQuote } from './paper-quote.ts';
import { quoteFields } from './quote-fields.ts';

/** One quote: its form, what it comes to, and what the customer sees. */
export function renderQuote(book: ScreenBook, quote: QuoteRow, number: number): TemplateResult {
  const answer = wantQuote(quote.id);
  const title = `quote-${quote.id}`;
  const name = quote.title === '' ? `Quote ${number}` : quote.title;
  return html`<section class="panel quote" aria-labelledby=${title} data-row="quotes/${quote.id}">
    <header>
      <div>
        <h2 id=${title}>${name}</h2>
        <p>${quote.customer === '' ? 'no customer named' : `for ${quote.customer}`}</p>
      </div>
      ${answer === null ? nothing : standing(answer.sheet)}
      <div class="quote-acts">
        <button
          type="button"
          class="button"
          aria-label="Print the sheet for the customer, ${name}"
          ?disabled=${answer === null}
          @click=${() => printQuote(quote.id)}
        >
          ${screenIcon('print')} Print
        </button>
        ${removeAct('quotes', quote.id, name)}
      </div>
    </header>
    <div class="body">
      ${quoteFields(book, quote, answer?.problems ?? [])}
      <div class="quote-side">
        ${answer === null ? html`<p class="aside-words" role="status">Working it out…</p>` : figures(book, quote.id, answer)}
      </div>
      ${
        answer === null
          ? nothing
          : html`<details class="quote-preview">
              <summary>What the customer sees</summary>
              ${customerSheet(answer.sheet, book.formats)}
            </details>`
      }
    </div>
  </section>`;
}

function standing({ expired, validUntil }: CustomerSheet): TemplateResult {
  if (expired === null) return html`<span class="chip">no last day</span>`;
  return expired
    ? html`<span class="chip warning">expired on ${dateText(validUntil)}</span>`
    : html`<span class="chip good">valid until ${dateText(validUntil)}</span>`;
}

/** The inner reckoning; each number opens its working. */
function figures({ formats }: ScreenBook, id: string, answer: QuoteAnswer): TemplateResult {
  const taxed = answer.sheet.taxPercent !== null;
  const row = (
    field: 'materials' | 'markup' | 'labour' | 'net' | 'tax' | 'total',
    words: string,
    className = '',
  ): TemplateResult => html`<div class=${className}>
    <dt>${words}</dt>
    <dd>${figureButton(`quotes/${id}/${field}`, formats.money(answer[field].value), words)}</dd>
  </div>`;
  return html`<dl class="quote-figures">
    ${row('materials', 'Materials')} ${row('markup', 'Markup')} ${row('labour', 'Work')}
    ${taxed ? html`${row('net', 'Before tax', 'sum')} ${row('tax', `Tax, ${answer.sheet.taxPercent} %`)}` : nothing}
    ${row('total', taxed ? 'Total' : 'Total before tax', 'in-all')}
  </dl>`;
}
