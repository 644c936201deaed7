import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { choiceInput } from '../../../fields/choice-input.ts';
import { focusRow } from '../../../fields/focus-row.ts';
import { productChoices } from '../../../fields/products-of.ts';
import { addAct, removeAct } from '../../../fields/row-acts.ts';
import { addRow, saveField } from '../../../fields/save.ts';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../../fields/stack-table.ts';
import { asTyped, textInput } from '../../../fields/text-input.ts';
import { setupPanel } from './render-setup.ts';

/** When material comes that is not in the shop yet. */
export function renderArrivals(book: ScreenBook): TemplateResult {
  const { rows } = book.project;
  const { problems, products, catalogue } = book;
  return setupPanel(
    'arrivals',
    'Deliveries',
    'A product without a date is taken to be in the shop already.',
    html`${
      rows.arrivals.length === 0
        ? html`<p class="aside-words" data-list="arrivals" tabindex="-1">Everything is in the shop.</p>`
        : stackTable(
            'Deliveries',
            [['Product', 'wide'], ['There on'], ['Remove', 'acts']],
            repeat(
              rows.arrivals,
              ({ id }) => id,
              (row) => {
                const name = products.get(row.productId)?.name ?? 'the product';
                return html`<tr role="row" data-row="arrivals/${row.id}">
                  ${stackCell('Product', choiceInput({ place: { table: 'arrivals', id: row.id, field: 'productId' }, label: 'Product that comes', value: row.productId, choices: productChoices(catalogue, ['finish', 'thinner', 'abrasive', 'sheet', 'board', 'banding'], row.productId, 'not chosen'), save: saveField('arrivals', row.id, 'productId'), problems }), 'wide')}
                  ${stackCell('There on', textInput({ place: { table: 'arrivals', id: row.id, field: 'date' }, label: `Day on which ${name} comes`, text: row.date, read: asTyped, save: saveField('arrivals', row.id, 'date'), problems, placeholder: '2026-12-12' }))}
                  ${stackCell('', removeAct('arrivals', row.id, `delivery of ${name}`), 'acts')}
                </tr>`;
              },
            ),
            { list: 'arrivals' },
          )
    }
    <p>${addAct('arrivals', 'Add delivery', () => void add(book))}</p>`,
  );
}

/** The first product of a recipe that has no delivery yet, from today until the user says otherwise. */
async function add({ project }: ScreenBook): Promise<void> {
  const known = new Set(project.rows.arrivals.map(({ productId }) => productId));
  const next = project.rows.steps.find(({ productId }) => productId !== '' && !known.has(productId));
  const values = { productId: next?.productId ?? '', date: '' };
  focusRow('arrivals', await addRow('arrivals', values, 'add a delivery'));
}
