import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Catalogue, Supplier } from '../../../server/planning/product.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { addAct } from '../../fields/row-acts.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { showSuppliers } from './catalogue-view.ts';
import { addSupplier } from './product-requests.ts';
import { supplierFields } from './supplier-fields.ts';

/** Who sells what the catalogue holds, and how long they take. */
export function renderSuppliers(catalogue: Catalogue): TemplateResult {
  const { suppliers } = catalogue;
  return html`<article class="product" aria-labelledby="suppliers-title">
    <header class="product-head">
      <button type="button" class="button plain icon narrow-back" aria-label="Back to the list" @click=${() => showSuppliers(false)}>
        ${screenIcon('back')}
      </button>
      <div class="product-title">
        <h2 id="suppliers-title" tabindex="-1">Suppliers</h2>
        <p>Where things are bought. The buy list is sorted by them, and orders are due their lead time before the work.</p>
      </div>
      ${addAct('suppliers', 'Add supplier', () => void add(suppliers))}
    </header>
    <section class="panel" aria-label="Suppliers">
      <div class="body flush">
        ${
          suppliers.length === 0
            ? html`<p class="nothing-yet">No supplier yet.</p>`
            : stackTable(
                'Suppliers',
                [
                  ['Name', 'wide'],
                  ['Lead time', 'number'],
                  ['Products', 'number'],
                ],
                repeat(
                  suppliers,
                  ({ id }) => id,
                  (supplier) => supplierRow(catalogue, supplier),
                ),
                { extraClass: 'suppliers-table', list: 'suppliers' },
              )
        }
      </div>
    </section>
  </article>`;
}

function supplierRow({ products }: Catalogue, supplier: Supplier): TemplateResult {
  const fields = supplierFields(supplier);
  const sold = products.filter(
    ({ packs, retired }) => !retired && packs.some(({ supplierId }) => supplierId === supplier.id),
  ).length;
  return html`<tr role="row" data-row="suppliers/${supplier.id}">
    ${stackCell('Name', fields.name, 'wide')} ${stackCell('Lead time', fields.leadTime, 'number')}
    ${stackCell('Products', sold === 0 ? html`<span class="aside-words">none</span>` : String(sold), 'number')}
  </tr>`;
}

async function add(suppliers: readonly Supplier[]): Promise<void> {
  const names = new Set(suppliers.map(({ name }) => name));
  let name = 'New supplier';
  for (let count = 2; names.has(name); count += 1) name = `New supplier ${count}`;
  focusRow('suppliers', await addSupplier(name));
}
