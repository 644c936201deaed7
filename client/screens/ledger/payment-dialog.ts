import { html, nothing } from 'lit-html';
import type { Change, PaymentRow } from '../../../server/http/contract.ts';
import type { CostCategory } from '../../../server/planning/project-input.ts';
import { type Choice, grouped } from '../../fields/choice-input.ts';
import { dialogEnd, dialogText, dialogValue, sendDialog } from '../../fields/dialog-form.ts';
import type { Refusal } from '../../fields/faults.ts';
import { projectToday } from '../../fields/project-today.ts';
import { saveChanges } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { readShare } from '../../format/read-share.ts';
import { type Reading, refused, understood } from '../../format/reading.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import { supplierName } from '../buy/order-words.ts';
import { supplierChoices } from '../buy/supplier-choices.ts';
import { CATEGORY_WORDS } from '../buy/words.ts';
import { choicesFrom } from '../finish/words.ts';
import { dateText } from './day-text.ts';
import { ATTACHMENT_ACCEPT, keepAttachment } from './keep-attachment.ts';

/** What the dialog begins with. */
export type PaymentStart = Partial<Omit<PaymentRow, 'id' | 'position'>>;

const ORDER = 'order ';

/** Asks for one payment: when, how much, to whom, for what, and its paper. `id` changes one that is there. */
export function askForPayment(book: ScreenBook, start: PaymentStart = {}, id: string | null = null): void {
  const { catalogue, settings, formats } = book;
  const { currency } = settings;
  const chosen = start.orderId ? `${ORDER}${start.orderId}` : (start.category ?? 'other');
  const title = id === null ? 'Add a payment' : 'Change the payment';
  const option = ({ value, text }: Choice, now: string) =>
    html`<option value=${value} ?selected=${value === now}>${text}</option>`;
  openDialog(
    title,
    (close) => html`<form
      method="dialog"
      class="payment-form"
      novalidate
      @submit=${(event: SubmitEvent) =>
        void sendDialog(
          event,
          close,
          (form) => save(form, currency, id),
          id === null ? '[data-row^="payments/"] [data-act="edit"]' : undefined,
        )}
    >
      <h2>${title}</h2>
      <div class="form-grid">
        <label class="field"
          ><span>Amount, ${currency}, with tax</span
          ><input name="amount" inputmode="decimal" autocomplete="off" .value=${moneyInput(start.amountMinor ?? null, currency)}
        /></label>
        <label class="field"
          ><span>Of which tax</span
          ><input name="tax" inputmode="decimal" autocomplete="off" placeholder="not said" .value=${moneyInput(start.taxMinor ?? null, currency)}
        /></label>
        <label class="field"><span>Date</span><input type="date" name="date" max="9999-12-31" .value=${start.date ?? projectToday()} /></label>
        <label class="field"
          ><span>Direction</span
          ><select name="kind">
            ${option({ value: 'payment', text: 'paid' }, start.kind ?? 'payment')}
            ${option({ value: 'refund', text: 'came back (refund)' }, start.kind ?? 'payment')}
          </select></label
        >
        <label class="field"
          ><span>For</span
          ><select name="for">
            ${grouped(paidForChoices(book)).map(
              ([group, list]) =>
                html`<optgroup label=${group}>${list.map((choice) => option(choice, chosen))}</optgroup>`,
            )}
          </select></label
        >
        <label class="field"
          ><span>Supplier</span
          ><select name="supplier">${supplierChoices(catalogue, start.supplierId ?? '').map((choice) => option(choice, start.supplierId ?? ''))}</select></label
        >
        <label class="field"
          ><span>Receipt number</span><input name="receiptNumber" maxlength="200" autocomplete="off" .value=${start.receiptNumber ?? ''}
        /></label>
        <label class="field"
          ><span>Share of this project</span
          ><input name="share" inputmode="decimal" autocomplete="off" .value=${formats.share(start.share ?? 1)}
          /><small>less than 100 % when others use it too</small></label
        >
        <label class="field form-wide"><span>Note</span><input name="note" maxlength="200" autocomplete="off" .value=${start.note ?? ''} /></label>
        ${
          id === null
            ? html`<label class="field form-wide"
              ><span>Receipt: picture or PDF, up to 8 MB</span
              ><input type="file" name="paper" accept=${ATTACHMENT_ACCEPT}
            /></label>`
            : nothing
        }
      </div>
      ${dialogEnd(close, id === null ? 'Add payment' : 'Save')}
    </form>`,
  );
}

async function save(form: HTMLFormElement, currency: string, id: string | null): Promise<Refusal | null> {
  const paidFor = dialogText(form, 'for');
  const order = paidFor.startsWith(ORDER);
  const values = {
    kind: dialogText(form, 'kind'),
    date: dialogText(form, 'date'),
    amountMinor: dialogValue(form, 'amount', (typed) => readPaid(typed, currency)),
    taxMinor: dialogValue(form, 'tax', (typed) => readMoney(typed, currency)),
    supplierId: dialogText(form, 'supplier'),
    orderId: order ? paidFor.slice(ORDER.length) : '',
    category: order ? ('other' satisfies CostCategory) : paidFor,
    receiptNumber: dialogText(form, 'receiptNumber'),
    note: dialogText(form, 'note'),
    share: dialogValue(form, 'share', (typed) => readShare(typed, { least: 0, most: 100 })),
  };
  if (id !== null) return send({ op: 'update', table: 'payments', id, values }, 'change a payment');
  const [file] = (form.elements.namedItem('paper') as HTMLInputElement).files ?? [];
  const paper = file === undefined ? null : await keepAttachment(file);
  if (paper !== null && paper.refusal !== null) return paper.refusal;
  return send(
    { op: 'insert', table: 'payments', values: { ...values, attachmentId: paper?.kept.id ?? '' } },
    'add a payment',
  );
}

function send(change: Change, label: string): Promise<Refusal | null> {
  return saveChanges([change], label);
}

/** Orders first, then headings, as what a payment may be for. */
function paidForChoices(book: ScreenBook): readonly Choice[] {
  return [
    ...book.project.rows.orders.map((order) => ({
      value: `${ORDER}${order.id}`,
      text: `${supplierName(book, order.supplierId)}, ${dateText(order.date)}`,
      group: 'Orders',
    })),
    ...choicesFrom(CATEGORY_WORDS).map((choice) => ({ ...choice, group: 'Bought without an order' })),
  ];
}

/** An amount above nothing: a refund is told by its direction, not by a minus. */
function readPaid(typed: string, currency: string): Reading<number> {
  const reading = readMoney(typed, currency);
  if (!reading.ok) return reading;
  if (reading.value === null || reading.value === 0)
    return refused('Write how much was paid, such as 12.50.');
  return understood(reading.value);
}
