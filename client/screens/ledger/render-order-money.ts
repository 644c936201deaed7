import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { LedgerAnswer, OrderRow } from '../../../server/http/contract.ts';
import { rowSaid } from '../../fields/row-said.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { actions } from '../../state/store.ts';
import { supplierName } from '../buy/order-words.ts';
import { dateText } from './day-text.ts';
import { askForPayment } from './payment-dialog.ts';

type Money = LedgerAnswer['orders'][number];

/** What each order comes to, and what of it is paid. */
export function renderOrderMoney(book: ScreenBook, ledger: LedgerAnswer): TemplateResult {
  const { orders } = book.project.rows;
  return html`<section class="panel" aria-labelledby="order-money-title">
    <header>
      <div>
        <h2 id="order-money-title">Orders</h2>
        <p>At the prices charged, or else as agreed; what was sent back is taken off.</p>
      </div>
    </header>
    <div class="body flush">
      ${
        orders.length === 0
          ? html`<p class="nothing-yet">
            Nothing ordered yet. <button type="button" class="link" @click=${() => actions.show('buy')}>The buy list</button> makes
            an order of each supplier’s lines; it then stands here until it is paid.
          </p>`
          : stackTable(
              'What the orders come to',
              [
                ['Order', 'wide'],
                ['Goods', 'number'],
                ['Charges', 'number'],
                ['Tax', 'number'],
                ['Total', 'number'],
                ['Paid', 'number'],
                ['Still to pay', 'number'],
                ['Acts', 'acts'],
              ],
              repeat(
                orders,
                ({ id }) => id,
                (order) =>
                  orderRow(
                    book,
                    order,
                    ledger.orders.find(({ id }) => id === order.id),
                  ),
              ),
            )
      }
    </div>
  </section>`;
}

function orderRow(book: ScreenBook, order: OrderRow, money: Money | undefined): TemplateResult {
  const { formats } = book;
  const name = `${supplierName(book, order.supplierId)}, ${dateText(order.date)}`;
  const amount = (field: Exclude<keyof Money, 'id'>, words: string) =>
    stackCell(
      words,
      money === undefined
        ? '…'
        : heldFigure(formats, `ledger/orders/${order.id}/${field}`, money[field], `${words}, ${name}`),
      'number',
    );
  const changed = money?.priceChange.value ?? 0;
  return html`<tr role="row" data-row="orders/${order.id}">
    ${stackCell(
      'Order',
      html`<span class="item">${supplierName(book, order.supplierId)}</span
        ><span class="small">${dateText(order.date)}${order.number === '' ? '' : `, no. ${order.number}`}</span>
        ${
          money === undefined || changed === 0
            ? nothing
            : html`<span class="small"
              >charged
              ${heldFigure(formats, `ledger/orders/${order.id}/priceChange`, money.priceChange, `Charged above what was agreed, ${name}`)}
              ${changed > 0 ? 'above' : 'against'} the agreed prices</span
            >`
        }
        ${rowSaid(book.problems, 'orders', order.id)}`,
      'lead',
    )}
    ${amount('goods', 'Goods')} ${amount('charges', 'Charges')} ${amount('tax', 'Tax')} ${amount('total', 'Total')}
    ${amount('paid', 'Paid')} ${amount('open', 'Still to pay')}
    ${stackCell(
      '',
      money === undefined || money.open.value === 0
        ? html`<span class="chip good">paid</span>`
        : html`<button type="button" class="link act-link" @click=${() => pay(book, order, money)}>
            ${(money.open.value ?? 0) < 0 ? 'Refund…' : 'Pay…'}
          </button>`,
      'acts',
    )}
  </tr>`;
}

function pay(book: ScreenBook, order: OrderRow, { open }: Money): void {
  const due = open.value;
  askForPayment(book, {
    orderId: order.id,
    supplierId: order.supplierId,
    kind: due !== null && due < 0 ? 'refund' : 'payment',
    ...(due === null ? {} : { amountMinor: Math.abs(due) }),
  });
}
