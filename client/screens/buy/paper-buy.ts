import { html, nothing, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, paperHead } from '../../paper/print-paper.ts';
import { getState } from '../../state/store.ts';
import { dateText } from '../ledger/day-text.ts';
import { basketName } from './render-basket.ts';
import type { Basket, BuyLine } from './state-words.ts';
import { unpricedWords } from './words.ts';

/** The buy list to take along: a box to tick for each line still to be ordered, by supplier. */
addPaper({ name: 'buy', screen: 'buy', make: paperBuy });

function paperBuy(book: ScreenBook): TemplateResult | null {
  const { buying } = getState();
  if (buying === null) return null;
  const { formats, settings, project } = book;
  const { buy } = project.plan;
  const open = buy.unpricedLines ?? 0;
  const taxed = settings.taxPercent !== null;
  const lines = new Map(buying.lines.map((line) => [line.id, line]));
  return html`${paperHead(
    book,
    'Buy list',
    html`<p>
      Planned cost ${open > 0 ? 'at least ' : ''}<b>${formats.money(taxed ? buy.totalMinor : buy.netMinor)}</b>
      ${taxed ? `with ${formats.money(buy.taxMinor)} tax at ${settings.taxPercent} %` : 'before tax'}${open > 0 ? `, ${unpricedWords(open)}` : ''}.
      ${buying.baskets.length === 0 ? 'Nothing more is to be ordered.' : ''}
    </p>`,
  )}
  ${buying.baskets.map((basket) =>
    supplierPart(
      book,
      basket,
      basket.lineIds.flatMap((id) => lines.get(id) ?? []),
    ),
  )}`;
}

function supplierPart(book: ScreenBook, basket: Basket, lines: readonly BuyLine[]): TemplateResult {
  const { formats } = book;
  const total = basket.total.value;
  return html`<section>
    <h2>${basketName(basket)}<small>${basket.orderBy === null ? '' : `order by ${dateText(basket.orderBy)}`}</small></h2>
    <table>
      <thead>
        <tr>
          <th style="width: 6mm"><span class="visually-hidden">Done</span></th>
          <th style="width: 27%">Buy</th>
          <th>Item</th>
          <th class="number">Need</th>
          <th class="number">In stock</th>
          <th>Needed by</th>
          <th class="number">Cost</th>
        </tr>
      </thead>
      <tbody>
        ${lines.map((line) => paperLine(book, line))}
        ${
          total === null
            ? nothing
            : html`<tr class="sum">
              <th></th>
              <th colspan="5">${basket.tax.value === null ? 'Total before tax' : 'Total with tax'}${basket.delivery.value === null ? ', without delivery' : ', with delivery'}</th>
              <th class="number">${formats.money(total)}</th>
            </tr>`
        }
      </tbody>
    </table>
  </section>`;
}

function paperLine({ formats, products }: ScreenBook, line: BuyLine): TemplateResult {
  const instead =
    line.substituteId === null ? '' : (products.get(line.substituteId)?.name ?? line.substituteId);
  return html`<tr>
    <td><span class="tick-box"></span></td>
    <td><b>${packsText(formats.count, line)}</b></td>
    <td>
      ${instead === '' ? line.name : html`${instead}<small>in place of ${line.name}</small>`}${line.notes.length === 0 ? nothing : html`<small>${line.notes[0]}</small>`}
    </td>
    <td class="number">${formats.amount(line.need.value, line.unit)}</td>
    <td class="number">${line.onHand.value === 0 ? '' : formats.amount(line.onHand.value, line.unit)}</td>
    <td>${line.neededBy === null ? '' : dateText(line.neededBy)}</td>
    <td class="number">${line.cost.value === null ? 'no price' : formats.money(line.cost.value)}</td>
  </tr>`;
}

/** "2 × quart + 1 × gallon" */
function packsText(count: (value: number) => string, { packs }: BuyLine): string {
  if (packs.length === 0) return 'no pack known';
  return packs.map((pack) => `${count(pack.count)} × ${pack.label}`).join(' + ');
}
