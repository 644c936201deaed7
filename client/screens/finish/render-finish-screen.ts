import '../../fields/fields.css';
import './finish.css';
import './paper-finish.ts';
import './paper-cautions.ts';
import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { arrive } from '../../fields/arrive.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { addAct } from '../../fields/row-acts.ts';
import { addRow } from '../../fields/save.ts';
import { screenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { figureButton } from '../../panels/figure-button.ts';
import { printPaper } from '../../paper/print-paper.ts';
import type { AppState } from '../../state/store.ts';
import { openForFocus } from './finish-view.ts';
import { renderBlends } from './render-blends.ts';
import { renderCautions } from './render-cautions.ts';
import { renderRecipe } from './render-recipe.ts';
import { renderRules } from './render-rules.ts';
import { offerStarterRecipes } from './starter-recipes.ts';

/** Finish recipes and what each coat takes, blends, and what is used at a rate. */
export function renderFinishScreen(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  openForFocus(state);
  arrive(state);
  const { rows, plan } = book.project;
  return html`<section class="page finish-screen" aria-labelledby="finish-title">
    <div class="page-head">
      <div>
        <h1 id="finish-title">Finish</h1>
        <p>
          ${figureButton('totals/litres', book.formats.volume(plan.totals.litres), 'Liquid')} of finish on
          ${figureButton('totals/finishM2', book.formats.area(plan.totals.finishM2), 'Finished area')}, reckoned with
          ${book.settings.coverageChoice} coverage.
        </p>
      </div>
      <div class="page-acts">
        <button type="button" class="button" @click=${() => void offerStarterRecipes(book.products)}>Usual recipes…</button>
        <button type="button" class="button" @click=${() => printPaper('finish')}>${screenIcon('print')} Print recipes</button>
        <button type="button" class="button" @click=${() => printPaper('cautions')}>${screenIcon('print')} Print cautions</button>
        ${addAct('recipes', 'Add recipe', () => void addRecipe())}
      </div>
    </div>
    <div class="finish-columns">
      <div class="finish-main">
        ${
          rows.recipes.length === 0
            ? html`<div class="empty">
              <h2>No recipe yet</h2>
              <p>A recipe is the order of work on a face: sand, stain, seal, topcoat. Parts then name it in their finish columns.</p>
              <button type="button" class="button primary" @click=${() => void offerStarterRecipes(book.products)}>Begin with a usual recipe…</button>
            </div>`
            : repeat(
                rows.recipes,
                ({ id }) => id,
                (recipe) => renderRecipe(book, recipe),
              )
        }
        ${renderBlends(book)} ${renderRules(book)}
      </div>
      ${renderCautions()}
    </div>
  </section>`;
}

async function addRecipe(): Promise<void> {
  focusRow('recipes', await addRow('recipes', { name: 'New recipe' }, 'add a recipe'));
}
