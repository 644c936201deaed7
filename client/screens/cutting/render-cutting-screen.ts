import '../../fields/fields.css';
import './cutting.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { MaterialSearch, PlanView } from '../../../server/http/contract.ts';
import { productProblems } from '../../fields/product-problems.ts';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { stat } from '../../fields/stat.ts';
import { icon } from '../../shell/icons.ts';
import { type AppState, actions } from '../../state/store.ts';
import { cutStagesSetting } from '../settings/cut-stages-setting.ts';
import { layoutsHead } from './layouts-head.ts';
import { renderAdvice } from './render-advice.ts';
import { renderLayout } from './render-layout.ts';
import { renderSearch } from './render-search.ts';

/** Problems of single parts that this screen shows with their material. */
const SHOWN_HERE: ReadonlySet<string> = new Set([
  'part-larger-than-sheet',
  'part-larger-than-board',
  'grain-match-too-large',
  'grain-match-alone',
  'part-narrower-than-kerf',
]);

type Material = PlanView['materials'][number];

/** Sheets and boards: how many, how each is cut, and whether fewer could do. */
export function renderCuttingScreen(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  const { materials } = book.project.plan;
  return html`<section class="page cutting-screen" aria-labelledby="cutting-title">
    <div class="page-head">
      <div>
        <h1 id="cutting-title">Cutting</h1>
        <p>
          Every layout can be made with straight cuts from edge to edge. Reckoned with a kerf of
          ${book.formats.length(book.settings.kerfMm)} and ${book.formats.length(book.settings.sheetTrimMm)} trimmed off each side
          of a full sheet.
        </p>
      </div>
      ${materials.some(({ kind }) => kind === 'sheet') ? html`<div class="cut-stages">${cutStagesSetting(book)}</div>` : nothing}
    </div>
    ${materials.length === 0 ? renderNone() : layoutsHead(book)}
    ${repeat(
      materials,
      ({ id }) => id,
      (material) => renderMaterial(book, material, searchOf(state, material)),
    )}
  </section>`;
}

function renderNone(): TemplateResult {
  return html`<div class="empty">
    <h2>Nothing to cut yet</h2>
    <p>Give parts a length, a width and a material, and their sheets and boards are laid out here.</p>
    <button type="button" class="button primary" @click=${() => actions.show('parts')}>Go to the parts</button>
  </div>`;
}

/** How the search of a material stands; null before the server has said so of the project as it is. */
function searchOf({ cutting, project }: AppState, { id }: Material): MaterialSearch | null {
  if (cutting === null || cutting.revision !== project?.revision) return null;
  return cutting.materials.find((one) => one.id === id) ?? null;
}

function renderMaterial(book: ScreenBook, material: Material, search: MaterialSearch | null): TemplateResult {
  const { formats } = book;
  const at = `materials/${material.id}`;
  const board = material.kind === 'board';
  return html`<article class="panel" aria-labelledby="material-${material.id}">
    <header>
      <h2 id="material-${material.id}">${material.name}</h2>
      ${verdict(material)}
    </header>
    <div class="body">
      <dl class="stats">
        ${stat(board ? 'Boards to buy' : 'Sheets to buy', `${at}/stocks`, formats.count(material.stocks), { lead: true })}
        ${stat('No plan needs fewer than', `${at}/boundStocks`, formats.count(material.boundStocks))}
        ${stat('Cost', `${at}/costMinor`, formats.money(material.costMinor), { below: 'before tax' })}
        ${board ? stat('Net length', `${at}/netM`, formats.run(material.netM)) : stat('Net area', `${at}/netM2`, formats.area(material.netM2))}
        ${stat('Thickness', `${at}/thicknessMm`, formats.thickness(material.thicknessMm))}
      </dl>
      ${search === null ? nothing : renderSearch(book.formats, search)} ${renderAdvice(search?.advice ?? [])}
      ${productProblems(book.problems, material.id)} ${misfits(book, material)}
      ${
        material.layouts.length === 0
          ? html`<p class="aside-words">Nothing of it can be laid out yet.</p>`
          : html`<ol class="layouts" data-kind=${material.kind}>
            ${repeat(
              material.layouts,
              ({ id }) => id,
              (layout) => renderLayout(book, material, layout),
            )}
          </ol>`
      }
    </div>
  </article>`;
}

/** Whether the plan is known to be the cheapest, or without prices the smallest; said plainly when it is not. */
function verdict({ proven, stocks, boundStocks, costMinor }: Material): TemplateResult | typeof nothing {
  if (stocks === null || boundStocks === null || stocks === 0) return nothing;
  const priced = costMinor !== null;
  if (proven)
    return html`<p class="chip good">${icon('check')} ${priced ? 'proven: no plan costs less' : 'proven: no plan needs fewer'}</p>`;
  const fewest = stocks <= boundStocks && priced;
  return html`<p class="chip note">
    ${fewest ? 'fewest sheets; a cheaper mix of sizes is not ruled out' : 'best plan found, not proven least'}
  </p>`;
}

/** Parts of this material that no sheet or board holds, and grain matches that cannot be. */
function misfits({ problems, project }: ScreenBook, material: Material): TemplateResult | typeof nothing {
  const parts = new Set(
    project.rows.parts.filter(({ materialId }) => materialId === material.id).map(({ id }) => id),
  );
  const found = problems.filter(({ code, at }) => SHOWN_HERE.has(code) && at.id !== null && parts.has(at.id));
  if (found.length === 0) return nothing;
  return html`<ul class="said-list">
    ${found.map(
      ({ severity, message, wayOut, at }) => html`<li class="said ${severity}">
        ${message} ${wayOut}
        <button type="button" class="link" @click=${() => actions.goTo(at)}>Go to the part</button>
      </li>`,
    )}
  </ul>`;
}
