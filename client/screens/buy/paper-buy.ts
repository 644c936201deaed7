import { html, nothing, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, paperHead } from '../../paper/print-paper.ts';
import { type BuyLine, groupLines, type SupplierLines } from './group-lines.ts';
import { unpricedWords } from './words.ts';

/** The buy list to take along: a box to tick for each line, by supplier. */
addPaper({ name: 'buy', screen: 'buy', make: paperBuy });

function paperBuy(book: ScreenBook): TemplateResult {
  const { formats, settings, project } = book;
  const { buy } = project.plan;
  const open = buy.unpricedLines ?? 0;
  const taxed = settings.taxPercent !== null;
  return html`${paperHead(
    book,
    'Buy list',
    html`<p>
      ${open > 0 ? 'At least ' : ''}<b>${formats.money(taxed ? buy.totalMinor : buy.netMinor)}</b>
      ${taxed ? `with ${formats.money(buy.taxMinor)} tax at ${settings.taxPercent} %` : 'before tax'}${open > 0 ? `, ${unpricedWords(open)}` : ''}
    </p>`,
  )}
  ${groupLines(buy.lines).map((group) => supplierPart(book, group))}`;
}

function supplierPart(book: ScreenBook, { supplierId, name, lines }: SupplierLines): TemplateResult {
  const lead = supplierId === null ? null : (book.suppliers.get(supplierId)?.leadTimeDays ?? null);
  return html`<section>
    <h2>${name}<small>${lead === null ? '' : `delivers in ${lead === 1 ? '1 day' : `${lead} days`}`}</small></h2>
    <table>
      <thead>
        <tr>
          <th style="width: 6mm"><span class="visually-hidden">Done</span></th>
          <th style="width: 27%">Buy</th>
          <th>Item</th>
          <th class="number">Need</th>
          <th class="number">On hand</th>
          <th class="number">Cost</th>
        </tr>
      </thead>
      <tbody>${lines.map((line) => paperLine(book, line))}</tbody>
    </table>
  </section>`;
}

function paperLine({ formats }: ScreenBook, line: BuyLine): TemplateResult {
  return html`<tr>
    <td><span class="tick-box"></span></td>
    <td><b>${packsText(formats.count, formats.amount(line.toBuy, line.unit), line)}</b></td>
    <td>${line.name}${line.notes.length === 0 ? nothing : html`<small>${line.notes[0]}</small>`}</td>
    <td class="number">${formats.amount(line.need, line.unit)}</td>
    <td class="number">${line.onHand === 0 ? '' : formats.amount(line.onHand, line.unit)}</td>
    <td class="number">${line.cost === null ? 'no price' : formats.money(line.cost)}</td>
  </tr>`;
}

/** "2 × quart + 1 × gallon"; a free line has no packs, its quantity is what is bought. */
export function packsText(count: (value: number) => string, quantity: string, line: BuyLine): string {
  if (line.productId === null) return quantity;
  if (line.packs.length === 0) return line.toBuy === 0 ? 'nothing' : 'no pack known';
  return line.packs.map((pack) => `${count(pack.count)} × ${pack.label}`).join(' + ');
}
