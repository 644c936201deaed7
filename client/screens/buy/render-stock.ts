import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { BuyingAnswer } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { icon } from '../../shell/icons.ts';
import { dateText } from '../ledger/day-text.ts';
import { askToTake } from './take-dialog.ts';

type Item = BuyingAnswer['stock'][number];
type Piece = Item['pieces'][number];

/** What there is of each product today: leftovers and deliveries less what coats and hands took. */
export function renderStock(book: ScreenBook, { stock }: BuyingAnswer): TemplateResult {
  return html`<section class="panel no-print" aria-labelledby="stock-title">
    <header>
      <div>
        <h2 id="stock-title">In stock today</h2>
        <p>Leftovers and deliveries, less what finished coats and you have taken. What is past its date is not counted.</p>
      </div>
    </header>
    <div class="body flush">
      ${
        stock.length === 0
          ? html`<p class="nothing-yet">
            Nothing in stock. Deliveries of orders come here by themselves; add started cans, rolls and offcuts below.
          </p>`
          : stackTable(
              'In stock today',
              [
                ['Product', 'wide'],
                ['Now', 'number'],
                ['Received', 'number'],
                ['Taken', 'number'],
                ['Expired', 'number'],
                ['Where and from when', 'wide'],
                ['Acts', 'acts'],
              ],
              repeat(
                stock,
                ({ id }) => id,
                (item) => stockRow(book, item),
              ),
              { extraClass: 'stock-table' },
            )
      }
    </div>
  </section>`;
}

function stockRow(book: ScreenBook, item: Item): TemplateResult {
  const { formats } = book;
  // What is used up has nowhere to be found.
  const pieces = item.pieces.filter(({ amount }) => amount > 0);
  const amount = (field: 'now' | 'received' | 'used' | 'expired', name: string) =>
    stackCell(
      name,
      item[field].value === 0 && field !== 'now'
        ? html`<span class="none">none</span>`
        : heldFigure(formats, `buying/stock/${item.id}/${field}`, item[field], `${name}, ${item.name}`),
      'number',
    );
  return html`<tr role="row" data-stock=${item.id}>
    ${stackCell('Product', html`<span class="item">${item.name}</span>`, 'lead')} ${amount('now', 'Now')}
    ${amount('received', 'Received')} ${amount('used', 'Taken')} ${amount('expired', 'Expired')}
    ${stackCell(
      'Where and from when',
      pieces.length === 0
        ? ''
        : html`<ul class="pieces">${pieces.map((piece) => html`<li>${pieceWords(book, item, piece)}</li>`)}</ul>`,
      'wide',
    )}
    ${stackCell(
      '',
      html`<button type="button" class="link act-link" aria-label="Take from ${item.name}" @click=${() => askToTake(book, item)}>Take…</button>`,
      'acts',
    )}
  </tr>`;
}

/** "0.3 L, shelf 2, batch B7, opened Mar 9, 2026, good until Sep 9, 2026" */
function pieceWords({ formats }: ScreenBook, { unit }: Item, piece: Piece): TemplateResult {
  const { amount, place, batch, openedOn, goodUntil, expired, from } = piece;
  const words = [
    formats.amount(amount, unit),
    from === 'receipts' ? 'delivered' : '',
    place,
    batch === '' ? '' : `batch ${batch}`,
    openedOn === '' ? '' : `opened ${dateText(openedOn)}`,
    goodUntil === null || expired ? '' : `good until ${dateText(goodUntil)}`,
  ].filter((word) => word !== '');
  return html`${words.join(', ')}${
    expired
      ? html` <span class="chip warning">${icon('problem')} expired${goodUntil === null ? '' : ` ${dateText(goodUntil)}`}</span>`
      : nothing
  }`;
}
