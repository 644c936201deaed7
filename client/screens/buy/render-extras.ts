import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ExtraRow } from '../../../server/http/contract.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { productChoices } from '../../fields/products-of.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { addRow, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { readNumber } from '../../format/read-number.ts';
import { choicesFrom } from '../finish/words.ts';
import { supplierChoices } from './supplier-choices.ts';
import { CATEGORY_WORDS } from './words.ts';

const KINDS = [
  'hardware',
  'consumable',
  'glue',
  'filler',
  'abrasive',
  'thinner',
  'finish',
  'banding',
  'board',
  'sheet',
] as const;

/** Lines the user adds: hinges, screws, delivery. */
export function renderExtras(book: ScreenBook): TemplateResult {
  const { extras } = book.project.rows;
  return html`<section class="panel no-print" aria-labelledby="extras-title">
    <header>
      <div>
        <h2 id="extras-title">Lines of your own</h2>
        <p>Hinges, screws, delivery: from the catalogue, or free lines with their own price.</p>
      </div>
      ${addAct('extras', 'Add line', () => void add())}
    </header>
    <div class="body flush">
      ${
        extras.length === 0
          ? html`<p class="nothing-yet" data-list="extras" tabindex="-1">No lines of your own.</p>`
          : stackTable(
              'Lines of your own',
              [
                ['Item', 'wide'],
                ['Name'],
                ['Category'],
                ['Quantity', 'number'],
                ['Price of one', 'number'],
                ['Supplier'],
                ['Remove', 'acts'],
              ],
              repeat(
                extras,
                ({ id }) => id,
                (extra) => extraRow(book, extra),
              ),
              { list: 'extras' },
            )
      }
    </div>
  </section>`;
}

function extraRow(book: ScreenBook, extra: ExtraRow): TemplateResult {
  const { catalogue, problems, products, settings } = book;
  const place = (field: string) => ({ table: 'extras', id: extra.id, field }) as const;
  const free = extra.productId === '';
  const name = (free ? extra.name : products.get(extra.productId)?.name) || 'this line';
  const fromCatalogue = html`<span class="none">from the catalogue</span>`;
  return html`<tr role="row" data-row="extras/${extra.id}">
    ${stackCell(
      'Item',
      choiceInput({
        place: place('productId'),
        label: 'Item',
        value: extra.productId,
        choices: productChoices(catalogue, KINDS, extra.productId, 'free line'),
        save: saveField('extras', extra.id, 'productId'),
        problems,
      }),
      'wide',
    )}
    ${stackCell(
      'Name',
      free
        ? textInput({
            place: place('name'),
            label: 'Name of the free line',
            text: extra.name,
            placeholder: 'what it is',
            read: asTyped,
            save: saveField('extras', extra.id, 'name'),
            problems,
          })
        : fromCatalogue,
    )}
    ${stackCell(
      'Category',
      free
        ? choiceInput({
            place: place('category'),
            label: `Category of ${name}`,
            value: extra.category,
            choices: choicesFrom(CATEGORY_WORDS),
            save: saveField('extras', extra.id, 'category'),
            problems,
          })
        : '',
    )}
    ${stackCell(
      'Quantity',
      textInput({
        place: place('quantity'),
        label: `Quantity of ${name}`,
        text: String(extra.quantity),
        read: (typed) => readNumber(typed, { least: 0, most: 1_000_000 }),
        save: saveField('extras', extra.id, 'quantity'),
        problems,
        numeric: true,
      }),
      'number',
    )}
    ${stackCell(
      'Price of one',
      free
        ? textInput({
            place: place('unitPriceMinor'),
            label: `Price of one ${name}, ${settings.currency}, before tax`,
            text: moneyInput(extra.unitPriceMinor, settings.currency),
            placeholder: 'not known',
            read: (typed) => readMoney(typed, settings.currency),
            save: saveField('extras', extra.id, 'unitPriceMinor'),
            problems,
            numeric: true,
          })
        : '',
      'number',
    )}
    ${stackCell(
      'Supplier',
      free
        ? choiceInput({
            place: place('supplierId'),
            label: `Supplier of ${name}`,
            value: extra.supplierId,
            choices: supplierChoices(catalogue, extra.supplierId),
            save: saveField('extras', extra.id, 'supplierId'),
            problems,
          })
        : '',
    )}
    ${stackCell('', removeAct('extras', extra.id, name), 'acts')}
  </tr>`;
}

async function add(): Promise<void> {
  focusRow(
    'extras',
    await addRow('extras', { productId: '', name: '', category: 'hardware', quantity: 1 }, 'add a line'),
  );
}
