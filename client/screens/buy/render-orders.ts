import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { BuyingAnswer, OrderLineRow, OrderRow } from '../../../server/http/contract.ts';
import { dateInput } from '../../fields/date-input.ts';
import { removeAct } from '../../fields/row-acts.ts';
import { saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { readNumber } from '../../format/read-number.ts';
import { understood } from '../../format/reading.ts';
import { icon } from '../../shell/icons.ts';
import { dateText } from '../ledger/day-text.ts';
import { lineName, supplierName } from './order-words.ts';
import { askToReceive, askToReturn } from './receive-dialog.ts';
import { ORDER_STATES } from './state-words.ts';

const MOST_PACKS = 1_000_000;

type Standing = BuyingAnswer['orders'][number];
type LineStanding = Standing['lines'][number];

/** What was ordered, what of it has come, and what is still to come. */
export function renderOrders(book: ScreenBook, buying: BuyingAnswer): TemplateResult {
  const { orders } = book.project.rows;
  if (orders.length === 0)
    return html`<section class="panel no-print" aria-labelledby="orders-title">
      <header><h2 id="orders-title">Orders</h2></header>
      <p class="nothing-yet" data-list="orders" tabindex="-1">
        Nothing ordered yet. “Order these…” makes an order of a supplier’s lines; deliveries, also in parts, are then noted here.
      </p>
    </section>`;
  return html`<div class="orders" data-list="orders" tabindex="-1">
    ${repeat(
      orders,
      ({ id }) => id,
      (order) =>
        renderOrder(
          book,
          order,
          buying.orders.find(({ id }) => id === order.id),
        ),
    )}
  </div>`;
}

function renderOrder(book: ScreenBook, order: OrderRow, standing: Standing | undefined): TemplateResult {
  const { rows } = book.project;
  const lines = rows.orderLines.filter(({ orderId }) => orderId === order.id);
  const standings = new Map(standing?.lines.map((line) => [line.id, line]));
  const supplier = supplierName(book, order.supplierId);
  const arriving = lines.flatMap((line) => {
    const toCome = standings.get(line.id)?.open ?? 0;
    return toCome === 0 ? [] : [{ line, name: lineName(book, line), toCome }];
  });
  const title = `order-${order.id}`;
  return html`<section class="panel order no-print" aria-labelledby=${title} data-row="orders/${order.id}">
    <header>
      <h2 id=${title}>Order: ${supplier} ${standing === undefined ? nothing : standingChips(standing)}</h2>
      <div class="toolbar">
        ${
          arriving.length === 0
            ? nothing
            : html`<button
                type="button"
                class="button"
                @click=${() => askToReceive(`Delivery from ${supplier}`, arriving)}
              >
                Receive…
              </button>`
        }
        ${removeAct('orders', order.id, `the order from ${supplier}`)}
      </div>
    </header>
    <div class="body order-terms">${orderTerms(book, order)}</div>
    <div class="body flush">
      ${stackTable(
        `Lines of the order from ${supplier}`,
        [
          ['Item', 'wide'],
          ['Ordered', 'number'],
          ['Price of one', 'number'],
          ['Charged', 'number'],
          ['Received', 'number'],
          ['Acts', 'acts'],
        ],
        repeat(
          lines,
          ({ id }) => id,
          (line) => orderLine(book, line, standings.get(line.id)),
        ),
        { extraClass: 'order-table' },
      )}
    </div>
  </section>`;
}

/** How far the order has come, and when the rest of it should be here. */
function standingChips({ state, overdue, expectedOn }: Standing): TemplateResult {
  const [words, tone] = ORDER_STATES[state];
  const waiting = state === 'ordered' || state === 'part-received';
  return html`<span class="chip ${tone}" data-standing=${state}>${words}</span>
    ${
      expectedOn === null || !waiting
        ? nothing
        : overdue
          ? html`<span class="chip error" data-overdue>${icon('problem')} overdue since ${dateText(expectedOn)}</span>`
          : html`<span class="chip">expected ${dateText(expectedOn)}</span>`
    }`;
}

function orderTerms({ problems, settings }: ScreenBook, order: OrderRow): TemplateResult {
  const place = (field: string) => ({ table: 'orders', id: order.id, field }) as const;
  const money = (field: 'deliveryMinor' | 'surchargeMinor', label: string): TemplateResult =>
    textInput<number>({
      place: place(field),
      label,
      text: moneyInput(order[field], settings.currency),
      read: (typed) => {
        const reading = readMoney(typed, settings.currency);
        return reading.ok ? understood(reading.value ?? 0) : reading;
      },
      save: saveField('orders', order.id, field),
      problems,
      numeric: true,
    });
  const text = (field: 'number' | 'note', label: string): TemplateResult =>
    textInput<string>({
      place: place(field),
      label,
      text: order[field],
      read: asTyped,
      save: saveField('orders', order.id, field),
      problems,
    });
  return html`<div class="form-grid">
    <div class="field"><span>Ordered on</span>${dateInput({ place: place('date'), label: 'Ordered on', value: order.date, save: saveField('orders', order.id, 'date'), problems })}</div>
    <div class="field"><span>Order number</span>${text('number', 'Order number')}</div>
    <div class="field"><span>Delivery charge</span>${money('deliveryMinor', 'Delivery charge')}</div>
    <div class="field"><span>Surcharge</span>${money('surchargeMinor', 'Surcharge')}</div>
    <div class="field"><span>Note</span>${text('note', 'Note on the order')}</div>
  </div>`;
}

function orderLine(book: ScreenBook, line: OrderLineRow, standing: LineStanding | undefined): TemplateResult {
  const { problems, settings } = book;
  const { received = 0, returned = 0, open: toCome = 0 } = standing ?? {};
  const place = (field: string) => ({ table: 'orderLines', id: line.id, field }) as const;
  const name = lineName(book, line);
  const price = (
    field: 'unitPriceMinor' | 'invoicedPriceMinor',
    label: string,
    none: string,
  ): TemplateResult =>
    textInput<number | null>({
      place: place(field),
      label: `${label} ${name}, ${settings.currency}`,
      text: moneyInput(line[field], settings.currency),
      placeholder: none,
      read: (typed) => readMoney(typed, settings.currency),
      save: saveField('orderLines', line.id, field),
      problems,
      numeric: true,
    });
  return html`<tr role="row" data-row="orderLines/${line.id}">
    ${stackCell('Item', html`<span class="item">${name}</span>`, 'lead')}
    ${stackCell(
      'Ordered',
      textInput<number>({
        place: place('count'),
        label: `Packs of ${name} ordered`,
        text: String(line.count),
        read: (typed) => readNumber(typed, { least: 0, most: MOST_PACKS, whole: true }),
        save: saveField('orderLines', line.id, 'count'),
        problems,
        numeric: true,
      }),
      'number',
    )}
    ${stackCell('Price of one', price('unitPriceMinor', 'Agreed price of one', 'not known'), 'number')}
    ${stackCell('Charged', price('invoicedPriceMinor', 'Price charged for one', 'as agreed'), 'number')}
    ${stackCell('Received', html`<span data-received>${received} of ${line.count}</span>${returned === 0 ? nothing : html`<span class="small">${returned} sent back</span>`}`, 'number')}
    ${stackCell(
      '',
      html`${
        toCome === 0
          ? nothing
          : html`<button type="button" class="link act-link" @click=${() => askToReceive(`Receive ${name}`, [{ line, name, toCome }])}>Receive</button>`
      }
      ${
        received <= returned
          ? nothing
          : html`<button type="button" class="link act-link" @click=${() => askToReturn(line, name)}>Send back</button>`
      }
      ${removeAct('orderLines', line.id, name)}`,
      'acts',
    )}
  </tr>`;
}
