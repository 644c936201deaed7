import { html, nothing, type TemplateResult } from 'lit-html';
import type { Change } from '../../../server/http/contract.ts';
import { dialogEnd, dialogText, dialogValue, sendDialog } from '../../fields/dialog-form.ts';
import type { Refusal } from '../../fields/faults.ts';
import { projectToday } from '../../fields/project-today.ts';
import { saveChanges } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { readNumber } from '../../format/read-number.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import { basketName } from './render-basket.ts';
import type { Basket, BuyLine } from './state-words.ts';

/** One pack, or the quantity of a free line, as it is about to be ordered. */
interface Wanted {
  readonly productId: string;
  readonly packId: string;
  readonly name: string;
  readonly label: string;
  readonly category: BuyLine['category'];
  readonly count: number;
  readonly packAmount: number;
  readonly unitPriceMinor: number | null;
}

const MOST_PACKS = 1_000_000;

/** An order without lines would only stand in the way. */
async function order(changes: readonly Change[], name: string): Promise<Refusal | null> {
  if (changes.length > 1) return saveChanges(changes, `order from ${name}`);
  return { message: 'Every count is 0, so there is nothing to order.', wayOut: 'Enter how many packs.' };
}

/** Makes an order of what is to be bought from one supplier; counts and prices can be set right first. */
export function askToOrder(book: ScreenBook, basket: Basket, lines: readonly BuyLine[]): void {
  const wanted = lines.flatMap((line) => wantedOf(line, book));
  const packless = lines.filter(({ packs }) => packs.length === 0);
  const { currency } = book.settings;
  const name = basketName(basket);
  openDialog(
    `Order from ${name}`,
    (close) => html`<form
      method="dialog"
      class="order-form"
      @submit=${(event: SubmitEvent) =>
        void sendDialog(
          event,
          close,
          (form) => order(orderChanges(form, wanted, basket.id, currency), name),
          '.order header .button',
        )}
    >
      <h2>Order from ${name}</h2>
      <p class="aside-words">Set counts and prices right as agreed. A count of 0 leaves a line out; prices are before tax, ${currency}.</p>
      <div class="order-lines" role="group" aria-label="Lines">
        ${wanted.map((one, index) => wantedRow(one, index, currency))}
      </div>
      ${
        packless.length === 0
          ? nothing
          : html`<p class="said warning">
            Not in this order, since no pack is known: ${packless.map((line) => line.name).join(', ')}. Add a pack in the catalogue first.
          </p>`
      }
      <div class="form-grid">
        <label class="field"><span>Ordered on</span><input type="date" name="date" required .value=${projectToday()} /></label>
        <label class="field"><span>Order number</span><input name="number" maxlength="200" autocomplete="off" /></label>
        <label class="field"
          ><span>Delivery charge</span
          ><input name="delivery" inputmode="decimal" autocomplete="off" placeholder=${basket.delivery.value === null ? 'not known' : 'none'} .value=${moneyInput(basket.delivery.value, currency)} /></label
        >
        <label class="field"><span>Surcharge</span><input name="surcharge" inputmode="decimal" autocomplete="off" placeholder="none" .value=${moneyInput(basket.surcharge.value === 0 ? null : basket.surcharge.value, currency)} /></label>
      </div>
      ${dialogEnd(close, 'Order these')}
    </form>`,
  );
}

function wantedOf({ name, category, packs }: BuyLine, { products }: ScreenBook): readonly Wanted[] {
  return packs.map(({ packId, productId, label, count, amount, priceMinor }) => ({
    productId: productId ?? '',
    packId: productId === null ? '' : packId,
    name: productId === null ? name : (products.get(productId)?.name ?? name),
    label,
    category,
    count,
    packAmount: amount,
    unitPriceMinor: priceMinor,
  }));
}

function wantedRow(
  { name, label, count, unitPriceMinor }: Wanted,
  index: number,
  currency: string,
): TemplateResult {
  return html`<div class="order-line">
    <span class="order-name">${name}<span class="order-pack">${label}</span></span>
    <label class="field"
      ><span>Count</span
      ><input name="count-${index}" inputmode="numeric" autocomplete="off" aria-label="Count of ${name} ${label}" .value=${String(count)}
    /></label>
    <label class="field"
      ><span>Price of one</span
      ><input name="price-${index}" inputmode="decimal" autocomplete="off" placeholder="not known" aria-label="Price of one ${name} ${label}, ${currency}" .value=${moneyInput(unitPriceMinor, currency)}
    /></label>
  </div>`;
}

function orderChanges(
  form: HTMLFormElement,
  wanted: readonly Wanted[],
  supplierId: string,
  currency: string,
): readonly Change[] {
  const money = (name: string): number | null =>
    dialogValue(form, name, (typed) => readMoney(typed, currency));
  const lines = wanted.flatMap(({ label: _label, ...one }, index) => {
    const count = dialogValue(form, `count-${index}`, (typed) =>
      readNumber(typed, { least: 0, most: MOST_PACKS, whole: true }),
    );
    return count === 0 ? [] : [{ ...one, count, unitPriceMinor: money(`price-${index}`) }];
  });
  return [
    {
      op: 'insert',
      table: 'orders',
      tempId: 'order',
      values: {
        supplierId,
        date: dialogText(form, 'date'),
        number: dialogText(form, 'number'),
        deliveryMinor: money('delivery') ?? 0,
        surchargeMinor: money('surcharge') ?? 0,
      },
    },
    ...lines.map(
      (values): Change => ({ op: 'insert', table: 'orderLines', values: { orderId: 'order', ...values } }),
    ),
  ];
}
