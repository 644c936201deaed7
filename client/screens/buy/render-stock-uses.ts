import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { StockUseRow } from '../../../server/http/contract.ts';
import { dateInput } from '../../fields/date-input.ts';
import { removeAct } from '../../fields/row-acts.ts';
import { saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { readAmount } from '../../format/read-amount.ts';

/** What was taken from stock by hand, to be corrected or taken back. */
export function renderStockUses(book: ScreenBook): TemplateResult | typeof nothing {
  const { stockUses } = book.project.rows;
  if (stockUses.length === 0) return nothing;
  return html`<section class="panel no-print" aria-labelledby="uses-title">
    <header><h2 id="uses-title">Taken by hand</h2></header>
    <div class="body flush">
      ${stackTable(
        'Taken by hand',
        [['Product', 'wide'], ['Date'], ['How much', 'number'], ['Note'], ['Remove', 'acts']],
        repeat(
          stockUses,
          ({ id }) => id,
          (row) => useRow(book, row),
        ),
        { list: 'stockUses', extraClass: 'uses-table' },
      )}
    </div>
  </section>`;
}

function useRow({ products, problems, settings, formats }: ScreenBook, row: StockUseRow): TemplateResult {
  const product = products.get(row.productId);
  const name = product?.name ?? row.productId;
  const unit = product?.unit ?? 'pcs';
  const place = (field: string) => ({ table: 'stockUses', id: row.id, field }) as const;
  return html`<tr role="row" data-row="stockUses/${row.id}">
    ${stackCell('Product', html`<span class="item">${name}</span>`, 'lead')}
    ${stackCell('Date', dateInput({ place: place('date'), label: `Day on which ${name} was taken`, value: row.date, save: saveField('stockUses', row.id, 'date'), problems }))}
    ${stackCell(
      'How much',
      textInput({
        place: place('amount'),
        label: `How much of ${name} was taken`,
        text: formats.amount(row.amount, unit),
        read: (typed) => readAmount(typed, unit, settings.units),
        save: saveField('stockUses', row.id, 'amount'),
        problems,
        numeric: true,
      }),
      'number',
    )}
    ${stackCell(
      'Note',
      textInput<string>({
        place: place('note'),
        label: `Note on what was taken of ${name}`,
        text: row.note,
        read: asTyped,
        save: saveField('stockUses', row.id, 'note'),
        problems,
      }),
    )}
    ${stackCell('', removeAct('stockUses', row.id, `what was taken of ${name}`), 'acts')}
  </tr>`;
}
