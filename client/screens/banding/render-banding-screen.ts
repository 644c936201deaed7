import '../../fields/fields.css';
import './banding.css';
import './paper-banding.ts';
import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { PlanView } from '../../../server/http/contract.ts';
import { productProblems } from '../../fields/product-problems.ts';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { stat } from '../../fields/stat.ts';
import { figureButton } from '../../panels/figure-button.ts';
import { printPaper } from '../../paper/print-paper.ts';
import { type AppState, actions } from '../../state/store.ts';
import { productSwatch } from '../parts/product-swatch.ts';
import { renderRolls } from './render-rolls.ts';
import { renderStrips } from './render-strips.ts';

type Banding = PlanView['banding'][number];

/** Edge banding by product: what is needed and bought, how the rolls are cut, which strip belongs where. */
export function renderBandingScreen(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  const { plan } = book.project;
  return html`<section class="page banding-screen" aria-labelledby="banding-title">
    <div class="page-head">
      <div>
        <h1 id="banding-title">Banding</h1>
        <p>
          ${
            plan.banding.length === 0
              ? 'Strips, rolls and metres appear as soon as an edge carries a band.'
              : html`${figureButton('totals/bandedM', book.formats.run(plan.totals.bandedM), 'Banded edge')} of edge
                carry a band. Strips cannot be joined, so each is cut whole from one roll.`
          }
        </p>
      </div>
      ${
        plan.banding.length === 0
          ? nothing
          : html`<div class="page-acts">
            <button type="button" class="button" @click=${() => printPaper('banding')}>${screenIcon('print')} Print</button>
          </div>`
      }
    </div>
    ${plan.banding.length === 0 ? renderNone() : nothing}
    ${repeat(
      plan.banding,
      ({ id }) => id,
      (banding) => renderProduct(book, banding),
    )}
  </section>`;
}

function renderNone(): TemplateResult {
  return html`<div class="empty">
    <h2>No edge is banded yet</h2>
    <p>In the part list, choose a banding for the front, back, left or right edge of a part.</p>
    <button type="button" class="button primary" @click=${() => actions.show('parts')}>Go to the parts</button>
  </div>`;
}

function renderProduct(book: ScreenBook, banding: Banding): TemplateResult {
  const { formats, products, project } = book;
  const product = products.get(banding.id);
  const at = `banding/${banding.id}`;
  const line = project.plan.buy.lines.find(({ productId }) => productId === banding.id);
  return html`<article class="panel" aria-labelledby="banding-${banding.id}" data-row="banding/${banding.id}">
    <header>
      <h2 id="banding-${banding.id}">
        ${product === undefined ? nothing : html`<span class="swatch" style="background: ${productSwatch(product)}"></span>`}
        ${banding.name}
      </h2>
      <p>${sizeWords(book, banding.id)}</p>
    </header>
    <div class="body">
      <dl class="stats">
        ${stat('Needed', `${at}/neededM`, formats.run(banding.neededM), { lead: true, below: 'with overhang and spares' })}
        ${stat('Rolls to buy', `${at}/rollsToBuy`, formats.count(banding.rollsToBuy), { lead: true })}
        ${stat('Bought', `${at}/boughtM`, formats.run(banding.boughtM))}
        ${stat('Wasted', `${at}/wastedM`, formats.run(banding.wastedM))}
        ${line === undefined ? nothing : stat('Price', `buy/lines/${line.id}/cost`, formats.money(line.cost))}
        ${stat('Strips', `${at}/strips`, formats.count(banding.strips))}
        ${stat('Edge', `${at}/edgeM`, formats.run(banding.edgeM), { below: 'without overhang' })}
      </dl>
      ${productProblems(book.problems, banding.id)} ${renderRolls(book, banding)} ${renderStrips(book, banding)}
    </div>
  </article>`;
}

/** "22 mm wide, 0.6 mm thick, comes off the cut size". */
function sizeWords({ products, formats }: ScreenBook, id: string): string {
  const product = products.get(id);
  const width = product?.figures.width?.typical ?? null;
  const thick = product?.figures.thicknessActual?.typical ?? null;
  return [
    width === null ? 'width not known' : `${formats.length(width)} wide`,
    thick === null ? 'thickness not known' : `${formats.thickness(thick)} thick`,
  ].join(', ');
}
