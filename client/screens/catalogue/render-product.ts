import { html, nothing, type TemplateResult } from 'lit-html';
import type { Catalogue, Product } from '../../../server/planning/product.ts';
import { placeKey } from '../../fields/place.ts';
import { productProblems } from '../../fields/product-problems.ts';
import { KIND_WORDS } from '../../fields/products-of.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { icon } from '../../shell/icons.ts';
import { type AppState, actions } from '../../state/store.ts';
import { type CatalogueView, openProduct } from './catalogue-view.ts';
import { duplicateProduct, retireProduct } from './product-requests.ts';
import { renderFigures } from './render-figures.ts';
import { renderPacks } from './render-packs.ts';
import { renderProperties } from './render-properties.ts';
import { renderRecoat } from './render-recoat.ts';
import { renderSolvents } from './render-solvents.ts';

/** One product: names, figures with their evidence, properties, recoat times, packs and prices. */
export function renderProduct(
  state: AppState,
  catalogue: Catalogue,
  product: Product,
  view: CatalogueView,
): TemplateResult {
  return html`<article class="product" aria-labelledby="product-name">
    <header class="product-head">
      <button type="button" class="button plain icon narrow-back" aria-label="Back to the list" @click=${() => openProduct(null)}>
        ${screenIcon('back')}
      </button>
      <div class="product-title">
        <h2 id="product-name" tabindex="-1" data-at=${placeKey({ table: 'products', id: product.id, field: null })}>${product.name}</h2>
        <p>
          ${KIND_WORDS[product.kind][0]}, counted in ${UNIT_WORDS[product.unit]}
          <span class="tag">${product.origin === 'user' ? 'yours' : 'shipped'}</span>
          ${product.retired ? html`<span class="tag">retired</span>` : nothing}
        </p>
      </div>
      <div class="toolbar">
        <button type="button" class="button" @click=${() => void duplicate(product.id)}>${icon('duplicate')} Duplicate</button>
        <button type="button" class="button" @click=${() => void retireProduct(product.id, !product.retired).then(say)}>
          ${product.retired ? screenIcon('restore') : screenIcon('archive')} ${product.retired ? 'Restore' : 'Retire'}
        </button>
      </div>
    </header>
    ${
      product.retired
        ? html`<p class="aside-words">Retired: projects that use it keep it, but it is no longer offered.</p>`
        : nothing
    }
    ${productProblems(state.project?.plan.problems ?? [], product.id, false)}
    ${product.note === null ? nothing : html`<p class="product-note">${product.note}</p>`}
    ${renderFigures(state, product, view)} ${renderPacks(state, catalogue, product)}
    ${product.kind === 'finish' ? renderRecoat(product) : nothing}
    ${product.kind === 'finish' || product.kind === 'thinner' ? renderSolvents(catalogue, product) : nothing}
    ${renderProperties(catalogue, product)}
  </article>`;
}

const UNIT_WORDS = { pcs: 'pieces', m: 'metres', L: 'litres', g: 'grams' } as const;

async function duplicate(id: string): Promise<void> {
  const { product, refusal } = await duplicateProduct(id);
  if (product !== null) openProduct(product.id);
  say({ refusal });
}

function say({
  refusal,
}: {
  readonly refusal: { readonly message: string; readonly wayOut: string } | null;
}): void {
  if (refusal !== null) actions.say({ kind: 'error', text: refusal.message, wayOut: refusal.wayOut });
}
