import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { BuyingAnswer, OnHandRow } from '../../../server/http/contract.ts';
import type { ProductKind } from '../../../server/planning/product.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { dateInput } from '../../fields/date-input.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { productChoices } from '../../fields/products-of.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { addRow, saveChanges, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { readAmount } from '../../format/read-amount.ts';
import { readLengthMm } from '../../format/read-length-mm.ts';
import { readNumber } from '../../format/read-number.ts';
import { understood } from '../../format/reading.ts';

const KINDS: readonly ProductKind[] = [
  'sheet',
  'board',
  'banding',
  'finish',
  'thinner',
  'abrasive',
  'glue',
  'filler',
  'hardware',
  'consumable',
];

/** Longest side of an offcut, mm: what the server takes. */
const LONGEST_MM = 100_000;

/** What is on the shelf for this project; it is used before anything is bought. */
export function renderOnHand(book: ScreenBook, buying: BuyingAnswer): TemplateResult {
  const { onHand } = book.project.rows;
  const expiredRows = new Set(
    buying.stock.flatMap(({ pieces }) =>
      pieces.filter(({ from, expired }) => from === 'onHand' && expired).map(({ id }) => id),
    ),
  );
  return html`<section class="panel no-print" aria-labelledby="on-hand-title">
    <header>
      <div>
        <h2 id="on-hand-title">Leftovers and offcuts</h2>
        <p>Started cans, leftover rolls, offcuts of sheets: used before anything is bought. Deliveries of orders are not entered here.</p>
      </div>
      ${addAct('onHand', 'Add', () => void add())}
    </header>
    <div class="body flush on-hand">
      ${
        onHand.length === 0
          ? html`<p class="nothing-yet" data-list="onHand" tabindex="-1">Nothing on hand for this project.</p>`
          : stackTable(
              'On hand',
              [
                ['Product', 'wide'],
                ['Each holds', 'number'],
                ['How many', 'number'],
                ['Length', 'number'],
                ['Width', 'number'],
                ['Place'],
                ['Batch'],
                ['Opened on'],
                ['Best before'],
                ['Remove', 'acts'],
              ],
              repeat(
                onHand,
                ({ id }) => id,
                (row) => onHandRow(book, row, expiredRows.has(row.id)),
              ),
              { list: 'onHand' },
            )
      }
    </div>
  </section>`;
}

function onHandRow(book: ScreenBook, row: OnHandRow, expired: boolean): TemplateResult {
  const { catalogue, problems, products, settings, formats } = book;
  const place = (field: string) => ({ table: 'onHand', id: row.id, field }) as const;
  const product = products.get(row.productId);
  const name = product?.name ?? 'this line';
  const unit = product?.unit ?? 'pcs';
  const sheet = product?.kind === 'sheet';
  const side = (field: 'lengthMm' | 'widthMm', word: string): TemplateResult =>
    textInput({
      place: place(field),
      label: `${word} of the offcut of ${name}`,
      text: row[field] === null ? '' : formats.length(row[field]),
      placeholder: 'not known',
      read: (typed) =>
        typed.trim() === ''
          ? understood(null)
          : readLengthMm(typed, settings.units, { leastMm: 1, mostMm: LONGEST_MM }),
      save: saveField('onHand', row.id, field),
      problems,
      numeric: true,
    });
  const words = (field: 'place' | 'batch', label: string): TemplateResult =>
    textInput<string>({
      place: place(field),
      label,
      text: row[field] ?? '',
      read: asTyped,
      save: saveField('onHand', row.id, field),
      problems,
    });
  const day = (field: 'openedOn' | 'bestBefore', label: string): TemplateResult =>
    dateInput({
      place: place(field),
      label,
      value: row[field] ?? '',
      save: saveField('onHand', row.id, field),
      problems,
    });
  return html`<tr role="row" data-row="onHand/${row.id}">
    ${stackCell(
      'Product',
      choiceInput({
        place: place('productId'),
        label: 'Product on hand',
        value: row.productId,
        choices: productChoices(catalogue, KINDS, row.productId, 'not chosen'),
        save: (productId) =>
          saveChanges([{ op: 'update', table: 'onHand', id: row.id, values: valuesFor(book, productId) }]),
        problems,
      }),
      'wide',
    )}
    ${stackCell(
      'Each holds',
      sheet
        ? html`<span class="none">one piece</span>`
        : textInput({
            place: place('amount'),
            label: `How much each ${name} holds`,
            text: formats.amount(row.amount, unit),
            read: (typed) => readAmount(typed, unit, settings.units),
            save: saveField('onHand', row.id, 'amount'),
            problems,
            numeric: true,
          }),
      'number',
    )}
    ${stackCell(
      'How many',
      textInput({
        place: place('count'),
        label: `How many of ${name}`,
        text: String(row.count),
        read: (typed) => readNumber(typed, { least: 0, most: 1_000_000, whole: true }),
        save: saveField('onHand', row.id, 'count'),
        problems,
        numeric: true,
      }),
      'number',
    )}
    ${stackCell('Length', sheet ? side('lengthMm', 'Length') : '', 'number')}
    ${stackCell('Width', sheet ? side('widthMm', 'Width') : '', 'number')}
    ${stackCell('Place', words('place', `Place of ${name}`))}
    ${stackCell('Batch', words('batch', `Batch of ${name}`))}
    ${stackCell('Opened on', day('openedOn', `Day on which ${name} was opened`))}
    ${stackCell(
      'Best before',
      html`${day('bestBefore', `Best before of ${name}`)}${expired ? html`<span class="said warning">Past its date, not counted.</span>` : nothing}`,
    )}
    ${stackCell('', removeAct('onHand', row.id, `${name} on hand`), 'acts')}
  </tr>`;
}

/** A sheet counts as one piece; other products start without an offcut's size. */
function valuesFor(
  { products }: ScreenBook,
  productId: string,
): Readonly<Record<string, string | number | null>> {
  return products.get(productId)?.kind === 'sheet'
    ? { productId, amount: 1 }
    : { productId, lengthMm: null, widthMm: null };
}

async function add(): Promise<void> {
  focusRow(
    'onHand',
    await addRow('onHand', { productId: '', amount: 1, count: 1 }, 'add to what is on hand'),
  );
}
