import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { actions } from '../../state/store.ts';
import { shortDateText } from '../ledger/day-text.ts';
import { dueChip, mostPressing } from './due-chip.ts';
import { showMessage } from './message-dialog.ts';
import { askToOrder } from './order-dialog.ts';
import { itemWords } from './render-item.ts';
import { type Basket, type BuyLine, LINE_STATES } from './state-words.ts';

/** What is to be ordered from one supplier: the lines, what it comes to with charges and tax, and until when. */
export function renderBasket(book: ScreenBook, basket: Basket, lines: readonly BuyLine[]): TemplateResult {
  const id = `supplier-${basket.id || 'none'}`;
  const name = basketName(basket);
  const lead = book.suppliers.get(basket.id)?.leadTimeDays ?? null;
  const due = mostPressing(lines);
  return html`<section class="panel supplier" aria-labelledby=${id} data-basket=${basket.id}>
    <header>
      <div>
        <h2 id=${id}>
          ${
            basket.id === ''
              ? name
              : html`<button type="button" class="link" @click=${() => actions.goTo({ table: 'suppliers', id: basket.id, field: 'deliveryMinor' })}>${name}</button>`
          }
          ${due === null ? nothing : dueChip(due)}</h2>
        <p>
          ${lines.length === 1 ? '1 line' : `${lines.length} lines`} to order${lead === null ? '' : `; delivers in ${lead === 1 ? '1 working day' : `${lead} working days`}`}
        </p>
      </div>
      <div class="toolbar no-print">
        <button type="button" class="button" @click=${() => void showMessage(basket.id, name)}>Message…</button>
        <button type="button" class="button primary" @click=${() => askToOrder(book, basket, lines)}>Order these…</button>
      </div>
    </header>
    <div class="body flush">
      ${stackTable(
        `To order from ${name}`,
        [
          ['Item', 'wide'],
          ['Need', 'number'],
          ['In stock', 'number'],
          ['Order'],
          ['Cost', 'number'],
          ['Needed by'],
          ['Order by'],
        ],
        repeat(
          lines,
          (line) => line.id,
          (line) => renderLine(book, line),
        ),
      )}
      ${sums(book, basket)}
    </div>
  </section>`;
}

export function basketName({ id, name }: Pick<Basket, 'id' | 'name'>): string {
  return id === '' ? 'No supplier chosen' : name;
}

function renderLine(book: ScreenBook, line: BuyLine): TemplateResult {
  const { formats } = book;
  const at = `buying/lines/${line.id}`;
  const [words, tone] = LINE_STATES[line.state];
  return html`<tr role="row" data-line=${line.id}>
    ${stackCell('Item', html`${itemWords(book, line)}${line.state === 'to-order' ? nothing : html`<span class="chip ${tone}">${words}</span>`}`, 'lead')}
    ${stackCell('Need', heldFigure(formats, `${at}/need`, line.need, `Need, ${line.name}`), 'number')}
    ${stackCell('In stock', line.onHand.value === 0 ? html`<span class="none">none</span>` : heldFigure(formats, `${at}/onHand`, line.onHand, `In stock, ${line.name}`), 'number')}
    ${stackCell('Order', packWords(book, line))}
    ${stackCell('Cost', costWords(book, line), 'number')}
    ${stackCell('Needed by', line.neededBy === null ? html`<span class="none">not known</span>` : shortDateText(line.neededBy))}
    ${stackCell('Order by', line.orderBy === null && line.urgency === 'none' ? html`<span class="none">not known</span>` : dueChip(line, true))}
  </tr>`;
}

function packWords(book: ScreenBook, line: BuyLine): TemplateResult {
  const { formats } = book;
  return html`${
    line.packs.length === 0
      ? html`<span class="none">no pack known</span>`
      : html`<span class="packs">
        ${line.packs.map(
          ({ count, label, priceMinor }) =>
            html`<span
              ><b>${formats.count(count)} × ${label}</b>${priceMinor === null || count === 1 ? nothing : html` <small>at ${formats.money(priceMinor)}</small>`}</span
            >`,
        )}
      </span>`
  }<button
      type="button"
      class="link why"
      data-figure="buying/lines/${line.id}/toOrder"
      aria-haspopup="dialog"
      aria-label="Why this many: ${line.name}"
      @click=${() => void actions.openWorking(`buying/lines/${line.id}/toOrder`)}
    >
      why this many
    </button>`;
}

function costWords({ formats }: ScreenBook, line: BuyLine): TemplateResult {
  const at = `buying/lines/${line.id}`;
  if (line.cost.value === null)
    return html`<button
      type="button"
      class="link no-price"
      data-figure="${at}/cost"
      aria-label="Cost not known, ${line.name}"
      @click=${() => void actions.openWorking(`${at}/cost`)}
    >
      no price
    </button>`;
  return html`${heldFigure(formats, `${at}/cost`, line.cost, `Cost before tax, ${line.name}`)}${
    line.tax.value === null || line.tax.value === 0
      ? nothing
      : html`<span class="small">tax ${heldFigure(formats, `${at}/tax`, line.tax, `Tax, ${line.name}`)}</span>`
  }`;
}

/** Goods, charges, tax and total of the order, and what more would save. */
function sums({ formats }: ScreenBook, basket: Basket): TemplateResult {
  const at = `buying/baskets/${basket.id}`;
  const name = basketName(basket);
  const one = (field: 'goods' | 'delivery' | 'surcharge' | 'tax' | 'total', words: string) =>
    html`<div class="stat ${field === 'total' ? 'lead' : ''}">
      <dt>${words}</dt>
      <dd>${heldFigure(formats, `${at}/${field}`, basket[field], `${words}, ${name}`)}</dd>
    </div>`;
  return html`<footer class="basket-sums">
    <dl class="stats">
      ${one('goods', 'Goods')} ${one('delivery', 'Delivery')}
      ${basket.surcharge.value === 0 ? nothing : one('surcharge', 'Below minimum order')}
      ${basket.tax.value === null ? nothing : one('tax', 'Tax')} ${one('total', basket.tax.value === null ? 'Total before tax' : 'Total with tax')}
    </dl>
    ${basket.notes.length === 0 ? nothing : html`<ul class="basket-notes">${basket.notes.map((note) => html`<li>${note}</li>`)}</ul>`}
  </footer>`;
}
