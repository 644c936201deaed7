import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { BlendRow, ComponentRow } from '../../../server/http/contract.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { problemsAt } from '../../fields/problems-at.ts';
import { productChoices } from '../../fields/products-of.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { addRow, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { readNumber } from '../../format/read-number.ts';

/** Stains mixed in the shop, by parts of volume. */
export function renderBlends(book: ScreenBook): TemplateResult {
  const { blends } = book.project.rows;
  return html`<section class="panel" aria-labelledby="blends-title">
    <header>
      <div>
        <h2 id="blends-title">Blends</h2>
        <p>Stains you mix yourself, by parts of volume. Steps can use them like a product.</p>
      </div>
      ${addAct('blends', 'Add blend', () => void addBlend())}
    </header>
    <div class="body blends" data-list="blends" tabindex="-1">
      ${blends.length === 0 ? html`<p class="aside-words">No blends in this project.</p>` : ''}
      ${repeat(
        blends,
        ({ id }) => id,
        (blend) => renderBlend(book, blend),
      )}
    </div>
  </section>`;
}

function renderBlend(book: ScreenBook, blend: BlendRow): TemplateResult {
  const { project, problems } = book;
  const components = project.rows.components.filter(({ blendId }) => blendId === blend.id);
  const place = { table: 'blends', id: blend.id, field: 'name' } as const;
  return html`<div class="blend" data-row="blends/${blend.id}">
    <div class="blend-head">
      ${textInput({ place, label: 'Blend name', text: blend.name, read: asTyped, save: saveField('blends', blend.id, 'name'), problems })}
      ${removeAct('blends', blend.id, `blend ${blend.name}`)}
    </div>
    ${problemsAt(problems, { table: 'blends', id: blend.id, field: '' }).map(
      ({ severity, message, wayOut }) => html`<p class="said ${severity}">${message} ${wayOut}</p>`,
    )}
    ${
      components.length === 0
        ? ''
        : stackTable(
            `Components of ${blend.name}`,
            [
              ['Product', 'wide'],
              ['Parts', 'number'],
              ['Remove', 'acts'],
            ],
            repeat(
              components,
              ({ id }) => id,
              (component) => componentRow(book, component),
            ),
          )
    }
    <div>${addAct('components', 'Add component', () => void addComponent(blend.id))}</div>
  </div>`;
}

function componentRow(
  { catalogue, problems, products }: ScreenBook,
  component: ComponentRow,
): TemplateResult {
  const at = (field: string) => ({ table: 'components', id: component.id, field }) as const;
  const name = products.get(component.productId)?.name ?? 'component';
  return html`<tr role="row" data-row="components/${component.id}">
    ${stackCell(
      'Product',
      choiceInput({
        place: at('productId'),
        label: 'Product of the component',
        value: component.productId,
        choices: productChoices(catalogue, ['finish'], component.productId, 'not chosen'),
        save: saveField('components', component.id, 'productId'),
        problems,
      }),
      'wide',
    )}
    ${stackCell(
      'Parts',
      textInput({
        place: at('parts'),
        label: `Parts of ${name}`,
        text: String(component.parts),
        read: (typed) => readNumber(typed, { least: 0, most: 1_000_000 }),
        save: saveField('components', component.id, 'parts'),
        problems,
        numeric: true,
      }),
      'number',
    )}
    ${stackCell('', removeAct('components', component.id, name), 'acts')}
  </tr>`;
}

async function addBlend(): Promise<void> {
  focusRow('blends', await addRow('blends', { name: 'New blend' }, 'add a blend'));
}

async function addComponent(blendId: string): Promise<void> {
  focusRow('components', await addRow('components', { blendId, productId: '', parts: 1 }, 'add a component'));
}
