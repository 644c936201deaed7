import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { SizeRow } from '../../../server/http/contract.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { addRow, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { figureButton } from '../../panels/figure-button.ts';

/** Named sizes: change one, and every part that uses it follows. */
export function renderSizes(book: ScreenBook): TemplateResult {
  const { sizes } = book.project.rows;
  return html`<section class="panel" aria-labelledby="sizes-title">
    <header>
      <div>
        <h2 id="sizes-title">Named sizes</h2>
        <p>Cells of the part list that begin with = can use them: <code>=seat_depth - 2*ply</code>.</p>
      </div>
      ${addAct('sizes', 'Add size', () => void add(sizes))}
    </header>
    <div class="body flush">
      ${
        sizes.length === 0
          ? html`<p class="nothing-yet" data-list="sizes" tabindex="-1">No named sizes yet.</p>`
          : stackTable(
              'Named sizes',
              [['Name'], ['Size or sum'], ['Comes to', 'number'], ['Note', 'wide'], ['Remove', 'acts']],
              repeat(
                sizes,
                ({ id }) => id,
                (size) => sizeRow(book, size),
              ),
              { list: 'sizes' },
            )
      }
    </div>
  </section>`;
}

function sizeRow({ problems, project, formats }: ScreenBook, size: SizeRow): TemplateResult {
  const text = (field: 'name' | 'value' | 'note', label: string): TemplateResult =>
    textInput({
      place: { table: 'sizes', id: size.id, field },
      label,
      text: size[field],
      read: asTyped,
      save: saveField('sizes', size.id, field),
      problems,
    });
  const plan = project.plan.sizes.find(({ id }) => id === size.id);
  return html`<tr role="row" data-row="sizes/${size.id}">
    ${stackCell('Name', text('name', 'Name of the size'))} ${stackCell('Size or sum', text('value', `Value of ${size.name}`))}
    ${stackCell(
      'Comes to',
      plan === undefined
        ? ''
        : figureButton(`sizes/${size.id}/valueMm`, formats.length(plan.valueMm), `${size.name} comes to`),
      'number',
    )}
    ${stackCell('Note', text('note', `Note on ${size.name}`), 'wide')}
    ${stackCell('', removeAct('sizes', size.id, size.name === '' ? 'size' : size.name), 'acts')}
  </tr>`;
}

async function add(sizes: readonly SizeRow[]): Promise<void> {
  const names = new Set(sizes.map(({ name }) => name));
  let name = 'size_1';
  for (let count = 2; names.has(name); count += 1) name = `size_${count}`;
  focusRow('sizes', await addRow('sizes', { name, value: '', note: '' }, 'add a named size'));
}
