import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Catalogue, Product, ProductKind } from '../../../server/planning/product.ts';
import { KIND_WORDS } from '../../fields/products-of.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { icon } from '../../shell/icons.ts';
import { askForNewProduct } from './add-product.ts';
import { type CatalogueView, openProduct, setCatalogueView, showSuppliers } from './catalogue-view.ts';
import { matchingProducts } from './matching-products.ts';

/** The list at the side: search, kind, retired ones, and the products found, by kind. */
export function renderProductList(catalogue: Catalogue, view: CatalogueView): TemplateResult {
  const found = matchingProducts(catalogue.products, view);
  const kinds = (Object.keys(KIND_WORDS) as ProductKind[]).filter((kind) =>
    found.some((one) => one.kind === kind),
  );
  return html`<nav class="catalogue-list" aria-label="Products">
    <div class="catalogue-head">
      <span class="title" aria-hidden="true">Catalogue</span>
      <button type="button" class="button" @click=${askForNewProduct}>${icon('plus')} Add product</button>
    </div>
    <search class="catalogue-filter">
      <div class="search-box">
        ${screenIcon('search')}
        <input
          class="input"
          type="search"
          aria-label="Search the catalogue"
          placeholder="Search"
          .value=${view.search}
          @input=${(event: Event) => setCatalogueView({ search: (event.currentTarget as HTMLInputElement).value })}
        />
      </div>
      <select
        class="input"
        aria-label="Kind of product"
        @change=${(event: Event) => setCatalogueView({ kind: (event.currentTarget as HTMLSelectElement).value as ProductKind | '' })}
      >
        <option value="" .selected=${view.kind === ''}>all kinds</option>
        ${(Object.keys(KIND_WORDS) as ProductKind[]).map(
          (kind) =>
            html`<option value=${kind} .selected=${view.kind === kind}>${KIND_WORDS[kind][1]}</option>`,
        )}
      </select>
      <label class="check"
        ><input
          type="checkbox"
          .checked=${view.retired}
          @change=${(event: Event) => setCatalogueView({ retired: (event.currentTarget as HTMLInputElement).checked })}
        />
        retired too</label
      >
    </search>
    <button
      type="button"
      class="to-suppliers"
      aria-current=${view.suppliers ? 'true' : nothing}
      @click=${() => showSuppliers(true)}
    >
      <span>Suppliers</span><span class="short">${catalogue.suppliers.length}, with their lead times</span>
    </button>
    <p class="catalogue-count" role="status">${found.length === 1 ? '1 product' : `${found.length} products`}</p>
    <div class="catalogue-found">
      ${repeat(
        kinds,
        (kind) => kind,
        (kind) => html`<section aria-label=${KIND_WORDS[kind][1]}>
          <h2>${KIND_WORDS[kind][1]}</h2>
          <ul>
            ${repeat(
              found.filter((product) => product.kind === kind),
              ({ id }) => id,
              (product) => renderItem(product, product.id === view.productId),
            )}
          </ul>
        </section>`,
      )}
    </div>
  </nav>`;
}

function renderItem(product: Product, current: boolean): TemplateResult {
  return html`<li>
    <button
      type="button"
      class="catalogue-item"
      data-product=${product.id}
      aria-current=${current ? 'true' : nothing}
      @click=${() => openProduct(product.id)}
    >
      <span>${product.name}</span>
      <span class="short">${product.shortName}</span>
      ${product.origin === 'user' ? html`<span class="tag">yours</span>` : nothing}
      ${product.retired ? html`<span class="tag">retired</span>` : nothing}
    </button>
  </li>`;
}
