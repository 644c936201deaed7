import { html, nothing, type TemplateResult } from 'lit-html';
import type { LedgerAnswer } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { supplierName } from '../buy/order-words.ts';
import { dateText } from './day-text.ts';

type History = LedgerAnswer['prices'][number];
type Point = History['points'][number];

const KIND_WORDS: Readonly<Record<Point['kind'], string>> = {
  catalogue: 'in the catalogue',
  agreed: 'agreed',
  charged: 'charged',
};

/** What each product that was ordered has cost: in the catalogue, as agreed, and as charged in the end. */
export function renderPrices(book: ScreenBook, { prices }: LedgerAnswer): TemplateResult | typeof nothing {
  const known = prices.filter(({ points }) => points.some(({ kind }) => kind !== 'catalogue'));
  if (known.length === 0) return nothing;
  return html`<section class="panel" aria-labelledby="prices-title">
    <header>
      <div>
        <h2 id="prices-title">Price history</h2>
        <p>One pack, before tax. Every order adds what was agreed, and what was charged where that is another price.</p>
      </div>
    </header>
    <div class="body">
      ${known.map((history) => productPrices(book, history))}
    </div>
  </section>`;
}

function productPrices(book: ScreenBook, { id, points }: History): TemplateResult {
  const product = book.products.get(id);
  const name = product?.name ?? id;
  const pack = (point: Point): string =>
    product?.packs.find(({ id: packId }) => packId === point.packId)?.label ??
    book.formats.amount(point.packAmount, product?.unit ?? 'pcs');
  return html`<details class="price-history" data-prices=${id} open>
    <summary>${name}, ${points.length === 1 ? '1 price' : `${points.length} prices`}</summary>
    ${stackTable(
      `Prices of ${name}`,
      [['Day'], ['Pack', 'wide'], ['Supplier'], ['Price'], ['One pack', 'number']],
      points.map(
        (point) => html`<tr role="row">
          ${stackCell('Day', point.date === null ? html`<span class="none">no date</span>` : dateText(point.date))}
          ${stackCell('Pack', pack(point), 'wide')} ${stackCell('Supplier', supplierName(book, point.supplierId))}
          ${stackCell('Price', KIND_WORDS[point.kind])} ${stackCell('One pack', book.formats.money(point.priceMinor), 'number')}
        </tr>`,
      ),
    )}
  </details>`;
}
