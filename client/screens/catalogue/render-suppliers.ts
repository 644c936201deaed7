import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Catalogue, Supplier } from '../../../server/planning/product.ts';
import { addAct } from '../../fields/row-acts.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { icon } from '../../shell/icons.ts';
import { showSuppliers } from './catalogue-view.ts';
import { addSupplier, deleteSupplier, retireSupplier } from './product-requests.ts';
import { supplierFields } from './supplier-fields.ts';

/** Who sells what the catalogue holds, how long they take, and what they charge. */
export function renderSuppliers(catalogue: Catalogue): TemplateResult {
  const { suppliers } = catalogue;
  return html`<article class="product" aria-labelledby="suppliers-title" data-list="suppliers" tabindex="-1">
    <header class="product-head">
      <button type="button" class="button plain icon narrow-back" aria-label="Back to the list" @click=${() => showSuppliers(false)}>
        ${screenIcon('back')}
      </button>
      <div class="product-title">
        <h2 id="suppliers-title" tabindex="-1">Suppliers</h2>
        <p>
          Where things are bought. Orders are due their lead time before the work, counted in the supplier’s working days; charges
          decide which supplier comes cheapest.
        </p>
      </div>
      ${addAct('suppliers', 'Add supplier', () => void add(suppliers))}
    </header>
    ${suppliers.length === 0 ? html`<p class="nothing-yet">No supplier yet.</p>` : ''}
    ${repeat(
      suppliers,
      ({ id }) => id,
      (supplier) => supplierPanel(catalogue, supplier),
    )}
  </article>`;
}

function supplierPanel({ products }: Catalogue, supplier: Supplier): TemplateResult {
  const { id, name, retired } = supplier;
  const sold = products.filter(
    (product) => !product.retired && product.packs.some(({ supplierId }) => supplierId === id),
  ).length;
  const title = `supplier-name-${id}`;
  return html`<section class="panel" aria-labelledby=${title} data-row="suppliers/${id}">
    <header>
      <div>
        <h3 id=${title}>${name} ${retired ? html`<span class="chip warning">retired</span>` : ''}</h3>
        <p>${sold === 0 ? 'sells no product of the catalogue' : sold === 1 ? 'sells 1 product' : `sells ${sold} products`}</p>
      </div>
      <div class="toolbar">
        <button type="button" class="button" @click=${() => void retireSupplier(supplier, !retired)}>
          ${retired ? 'Offer again' : 'Retire'}
        </button>
        <button
          type="button"
          class="button plain icon"
          data-act="remove"
          aria-label="Delete ${name}"
          title="Delete"
          @click=${() => void deleteSupplier(supplier)}
        >
          ${icon('bin')}
        </button>
      </div>
    </header>
    <div class="body">${supplierFields(supplier)}</div>
  </section>`;
}

async function add(suppliers: readonly Supplier[]): Promise<void> {
  const names = new Set(suppliers.map(({ name }) => name));
  let name = 'New supplier';
  for (let count = 2; names.has(name); count += 1) name = `New supplier ${count}`;
  const id = await addSupplier(name);
  if (id !== null)
    requestAnimationFrame(() =>
      document.querySelector<HTMLElement>(`[data-at="suppliers/${CSS.escape(id)}/name"]`)?.focus(),
    );
}
