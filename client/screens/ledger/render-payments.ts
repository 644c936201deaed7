import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { LedgerAnswer, PaymentRow } from '../../../server/http/contract.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { rowSaid } from '../../fields/row-said.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { supplierName } from '../buy/order-words.ts';
import { CATEGORY_WORDS } from '../buy/words.ts';
import { attachmentCell } from './attachment-cell.ts';
import { dateText } from './day-text.ts';
import { askForPayment } from './payment-dialog.ts';

/** Money that went out and came back, with the papers for it. */
export function renderPayments(book: ScreenBook, ledger: LedgerAnswer): TemplateResult {
  const { payments } = book.project.rows;
  return html`<section class="panel" aria-labelledby="payments-title">
    <header>
      <div>
        <h2 id="payments-title">Purchases and payments</h2>
        <p>Amounts are with tax. A refund is money that came back for something sent back.</p>
      </div>
      ${addAct('payments', 'Add payment…', () => askForPayment(book))}
    </header>
    <div class="body flush">
      ${
        payments.length === 0
          ? html`<p class="nothing-yet" data-list="payments" tabindex="-1">
            Nothing paid yet. Pay an order from its line above, or add what was bought at the counter; a photo of the receipt can be kept with it.
          </p>`
          : stackTable(
              'Purchases and payments',
              [
                ['Date'],
                ['For', 'wide'],
                ['Amount', 'number'],
                ['Tax included', 'number'],
                ['For this project', 'number'],
                ['Receipt'],
                ['Acts', 'acts'],
              ],
              repeat(
                payments,
                ({ id }) => id,
                (row) => paymentRow(book, ledger, row),
              ),
              { list: 'payments', extraClass: 'payments-table' },
            )
      }
    </div>
  </section>`;
}

function paymentRow(book: ScreenBook, ledger: LedgerAnswer, row: PaymentRow): TemplateResult {
  const { formats } = book;
  const name = `the ${row.kind} of ${formats.money(row.amountMinor)}`;
  const own = ledger.payments.find(({ id }) => id === row.id)?.own;
  const small = [row.receiptNumber === '' ? '' : `no. ${row.receiptNumber}`, row.note].filter(
    (word) => word !== '',
  );
  return html`<tr role="row" data-row="payments/${row.id}">
    ${stackCell('Date', dateText(row.date) || 'no date')}
    ${stackCell(
      'For',
      html`<span class="item">${paidFor(book, row)}</span>${row.kind === 'refund' ? html` <span class="chip note">refund</span>` : nothing}
        ${small.length === 0 ? nothing : html`<span class="small">${small.join(', ')}</span>`}${rowSaid(book.problems, 'payments', row.id)}`,
      'lead',
    )}
    ${stackCell('Amount', formats.money(row.amountMinor), 'number')}
    ${stackCell('Tax included', row.taxMinor === null ? html`<span class="none">not said</span>` : formats.money(row.taxMinor), 'number')}
    ${stackCell('For this project', own === undefined ? '…' : heldFigure(formats, `ledger/payments/${row.id}/own`, own, `Borne by this project of ${name}`), 'number')}
    ${stackCell('Receipt', attachmentCell(book, row, name))}
    ${stackCell(
      '',
      html`<button
          type="button"
          class="button plain icon"
          data-act="edit"
          aria-label="Change ${name}"
          title="Change"
          @click=${() => askForPayment(book, row, row.id)}
        >
          ${screenIcon('pencil')}</button
        >${removeAct('payments', row.id, name)}`,
      'acts',
    )}
  </tr>`;
}

/** "Timber yard, order of Mar 9" or "Hardware, Timber yard". */
function paidFor(book: ScreenBook, row: PaymentRow): string {
  const order = book.project.rows.orders.find(({ id }) => id === row.orderId);
  if (order !== undefined) return `${supplierName(book, order.supplierId)}, order of ${dateText(order.date)}`;
  const words = CATEGORY_WORDS[row.category];
  return row.supplierId === '' ? words : `${words}, ${supplierName(book, row.supplierId)}`;
}
