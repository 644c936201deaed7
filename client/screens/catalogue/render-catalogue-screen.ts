import '../../fields/fields.css';
import './catalogue.css';
import { html, type TemplateResult } from 'lit-html';
import { keyed } from 'lit-html/directives/keyed.js';
import { arrive } from '../../fields/arrive.ts';
import type { AppState } from '../../state/store.ts';
import { catalogueView, openFocusedProduct } from './catalogue-view.ts';
import { renderProduct } from './render-product.ts';
import { renderProductList } from './render-product-list.ts';
import { renderSuppliers } from './render-suppliers.ts';

/** Products with every figure and where it comes from; the user's own beside the shipped ones. */
export function renderCatalogueScreen(state: AppState): TemplateResult {
  const { catalogue } = state;
  if (catalogue === null) return html``;
  openFocusedProduct(state);
  arrive(state);
  const view = catalogueView();
  const product = catalogue.products.find(({ id }) => id === view.productId);
  return html`<section class="catalogue-screen ${product === undefined && !view.suppliers ? '' : 'one-open'}" aria-labelledby="catalogue-title">
    <h1 id="catalogue-title" class="visually-hidden">Catalogue</h1>
    ${renderProductList(catalogue, view)}
    <div class="catalogue-product" tabindex="-1">
      ${
        view.suppliers
          ? renderSuppliers(catalogue)
          : product === undefined
            ? html`<div class="empty">
              <h2>Every figure says where it comes from</h2>
              <p>Choose a product to see its figures, their source and date, its packs and prices. Change what you know better.</p>
            </div>`
            : keyed(product.id, renderProduct(state, catalogue, product, view))
      }
    </div>
  </section>`;
}
