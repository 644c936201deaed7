import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { SubstituteRow } from '../../../server/http/contract.ts';
import type { ProductKind } from '../../../server/planning/product.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { productChoices } from '../../fields/products-of.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { addRow, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';

const KINDS: readonly ProductKind[] = [
  'finish',
  'thinner',
  'abrasive',
  'glue',
  'filler',
  'hardware',
  'consumable',
];

/** Products that may be bought in place of others: only the pairs the user allows. */
export function renderSubstitutes(book: ScreenBook): TemplateResult {
  const { substitutes } = book.project.rows;
  return html`<section class="panel no-print" aria-labelledby="substitutes-title">
    <header>
      <div>
        <h2 id="substitutes-title">Allowed in place of another</h2>
        <p>Bought instead, amount for amount, where that costs less. Nothing is swapped that is not listed here.</p>
      </div>
      ${addAct('substitutes', 'Add a pair', () => void add())}
    </header>
    <div class="body flush">
      ${
        substitutes.length === 0
          ? html`<p class="nothing-yet" data-list="substitutes" tabindex="-1">No substitute is allowed.</p>`
          : stackTable(
              'Allowed substitutes',
              [
                ['In place of', 'wide'],
                ['May be bought', 'wide'],
                ['Remove', 'acts'],
              ],
              repeat(
                substitutes,
                ({ id }) => id,
                (row) => pair(book, row),
              ),
              { list: 'substitutes' },
            )
      }
    </div>
  </section>`;
}

function pair({ catalogue, problems, products }: ScreenBook, row: SubstituteRow): TemplateResult {
  const choice = (field: 'productId' | 'substituteId', label: string): TemplateResult =>
    choiceInput({
      place: { table: 'substitutes', id: row.id, field },
      label,
      value: row[field],
      choices: productChoices(catalogue, KINDS, row[field], 'not chosen'),
      save: saveField('substitutes', row.id, field),
      problems,
    });
  const name = products.get(row.productId)?.name ?? 'this product';
  return html`<tr role="row" data-row="substitutes/${row.id}">
    ${stackCell('In place of', choice('productId', 'Product that may be replaced'), 'wide')}
    ${stackCell('May be bought', choice('substituteId', `What may be bought in place of ${name}`), 'wide')}
    ${stackCell('', removeAct('substitutes', row.id, `the substitute for ${name}`), 'acts')}
  </tr>`;
}

async function add(): Promise<void> {
  focusRow(
    'substitutes',
    await addRow('substitutes', { productId: '', substituteId: '' }, 'allow a substitute'),
  );
}
