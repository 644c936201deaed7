import { html, nothing, type TemplateResult } from 'lit-html';
import type { LedgerAnswer } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, paperHead } from '../../paper/print-paper.ts';
import { getState } from '../../state/store.ts';
import { supplierName } from '../buy/order-words.ts';
import { CATEGORY_WORDS } from '../buy/words.ts';
import { dateText } from './day-text.ts';

/** The account on paper: headings, orders, payments. */
addPaper({ name: 'ledger', screen: 'ledger', make: paperLedger });

const COLUMNS = [
  ['budget', 'Budget'],
  ['planned', 'Planned'],
  ['ordered', 'Ordered'],
  ['paid', 'Paid'],
  ['forecast', 'Forecast'],
  ['left', 'Left'],
] as const;

function paperLedger(book: ScreenBook): TemplateResult | null {
  const { ledger } = getState();
  if (ledger === null) return null;
  const { formats, settings } = book;
  const money = (minor: number | null, none = ''): string => (minor === null ? none : formats.money(minor));
  const headings = ledger.headings.filter(({ id: _id, ...amounts }) =>
    Object.values(amounts).some(({ value }) => value !== null && value !== 0),
  );
  return html`${paperHead(
    book,
    'Ledger',
    html`<p>
      <b>${money(ledger.totals.paid.value)}</b> paid of ${money(ledger.totals.ordered.value)} ordered; forecast
      <b>${money(ledger.forecast.value, 'not known')}</b>, of which ${money(ledger.contingency.value, 'not known')} contingency.
      ${settings.taxPercent === null ? 'Amounts are before tax.' : `Amounts are with tax at ${settings.taxPercent} %.`}
    </p>`,
  )}
    <section>
      <h2>By heading</h2>
      <table>
        <thead>
          <tr><th>Heading</th>${COLUMNS.map(([, name]) => html`<th class="number">${name}</th>`)}</tr>
        </thead>
        <tbody>
          ${headings.map(
            (heading) => html`<tr>
              <td>${CATEGORY_WORDS[heading.id]}</td>
              ${COLUMNS.map(([field]) => html`<td class="number">${money(heading[field].value)}</td>`)}
            </tr>`,
          )}
          <tr class="total">
            <th>Total</th>
            ${COLUMNS.map(([field]) => html`<th class="number">${money(ledger.totals[field].value)}</th>`)}
          </tr>
        </tbody>
      </table>
    </section>
    ${orders(book, ledger, money)} ${payments(book, ledger, money)}`;
}

type Money = (minor: number | null, none?: string) => string;

function orders(book: ScreenBook, ledger: LedgerAnswer, money: Money): TemplateResult | typeof nothing {
  const { orders } = book.project.rows;
  if (orders.length === 0) return nothing;
  return html`<section>
    <h2>Orders</h2>
    <table>
      <thead>
        <tr>
          <th>Order</th><th class="number">Goods</th><th class="number">Charges</th><th class="number">Tax</th>
          <th class="number">Total</th><th class="number">Paid</th><th class="number">To pay</th>
        </tr>
      </thead>
      <tbody>
        ${orders.map((order) => {
          const sums = ledger.orders.find(({ id }) => id === order.id);
          const cell = (field: 'goods' | 'charges' | 'tax' | 'total' | 'paid' | 'open') =>
            html`<td class="number">${money(sums?.[field].value ?? null, 'not known')}</td>`;
          return html`<tr>
            <td>${supplierName(book, order.supplierId)}<small>${dateText(order.date)}${order.number === '' ? '' : `, no. ${order.number}`}</small></td>
            ${cell('goods')} ${cell('charges')} ${cell('tax')} ${cell('total')} ${cell('paid')} ${cell('open')}
          </tr>`;
        })}
      </tbody>
    </table>
  </section>`;
}

function payments(book: ScreenBook, ledger: LedgerAnswer, money: Money): TemplateResult | typeof nothing {
  const { payments } = book.project.rows;
  if (payments.length === 0) return nothing;
  return html`<section>
    <h2>Purchases and payments</h2>
    <table>
      <thead>
        <tr><th>Date</th><th>For</th><th>Receipt</th><th>Note</th><th class="number">Tax included</th><th class="number">Amount</th></tr>
      </thead>
      <tbody>
        ${payments.map(
          (row) => html`<tr>
            <td>${dateText(row.date)}</td>
            <td>${supplierName(book, row.supplierId)}<small>${row.orderId === '' ? CATEGORY_WORDS[row.category] : 'order'}${row.kind === 'refund' ? ', refund' : ''}</small></td>
            <td>${row.receiptNumber}</td>
            <td>${row.note}</td>
            <td class="number">${money(row.taxMinor)}</td>
            <td class="number">${money(ledger.payments.find(({ id }) => id === row.id)?.own.value ?? null)}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}
