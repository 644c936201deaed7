import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Product, ProductFigure, ProductFigureName } from '../../../server/planning/product.ts';
import { placeKey } from '../../fields/place.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import type { AppState } from '../../state/store.ts';
import { type CatalogueView, setCatalogueView } from './catalogue-view.ts';
import { FIGURE_TERMS, figuresOfKind } from './figure-terms.ts';
import { figureValueText, usEquivalent } from './figure-value-text.ts';
import { renderEvidence } from './render-evidence.ts';
import { renderFigureForm } from './render-figure-form.ts';

/** The figures a product has, and those it could have: an empty place is an unknown, and says so. */
export function renderFigures(state: AppState, product: Product, view: CatalogueView): TemplateResult {
  const names = figuresOfKind(product.kind);
  if (names.length === 0) return html``;
  return html`<section class="panel" aria-labelledby="figures-title">
    <header>
      <h2 id="figures-title" tabindex="-1" data-at=${placeKey({ table: 'products', id: product.id, field: 'figures' })}>Figures</h2>
      <p>Each with where it comes from. What is not known stays empty and is never taken as zero.</p>
    </header>
    <div class="body flush">
      <ul class="figure-list">
        ${repeat(
          names,
          (name) => name,
          (name) => html`<li data-row="figures/${name}">
            ${
              view.figure === name
                ? renderFigureForm(product, name, product.figures[name] ?? null)
                : renderFigure(state, product, name, product.figures[name] ?? null)
            }
          </li>`,
        )}
      </ul>
    </div>
  </section>`;
}

function renderFigure(
  { project }: AppState,
  product: Product,
  name: ProductFigureName,
  figure: ProductFigure | null,
): TemplateResult {
  const { words } = FIGURE_TERMS[name];
  const value = figure === null ? null : figureValueText(figure, product.unit);
  const us = figure === null || project === null ? null : usEquivalent(figure, project.settings.units);
  return html`<div class="figure-row">
    <span class="figure-name">${words}</span>
    <span class="figure-value">
      ${value === null ? html`<span class="unknown">not known</span>` : html`<b>${value}</b>`}
      ${us === null ? nothing : html`<small>${us}</small>`}
    </span>
    ${figure === null ? html`<span class="evidence"></span>` : renderEvidence(figure)}
    <button
      type="button"
      class="button plain icon"
      aria-label="${figure === null ? 'Enter' : 'Change'} ${words.toLowerCase()}"
      title=${figure === null ? 'Enter' : 'Change'}
      data-at=${placeKey({ table: 'products', id: product.id, field: name })}
      @click=${() => {
        setCatalogueView({ figure: name });
        requestAnimationFrame(() => document.querySelector<HTMLInputElement>('.figure-form input')?.focus());
      }}
    >
      ${screenIcon('pencil')}
    </button>
  </div>`;
}
