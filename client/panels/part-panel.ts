import './panels.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import type { PartPlanView, PartRow } from '../../server/http/contract.ts';
import { finishTone } from '../drawing/finish-tone.ts';
import { notToScale, partDrawing } from '../drawing/part-drawing.ts';
import { partDrawingOf, recipeName } from '../drawing/part-drawing-of.ts';
import { type ScreenBook, screenBook } from '../fields/screen-book.ts';
import type { AppState } from '../state/store.ts';
import { figureButton } from './figure-button.ts';
import { edgesText } from './figure-title.ts';

/** The selected part, drawn to scale, with every figure that is worked out for it. */
export function renderPartPanel(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  const { rows, plan } = book.project;
  const row = rows.parts.find(({ id }) => id === state.selectedPartId);
  const figures = plan.parts.find(({ id }) => id === state.selectedPartId);
  if (row === undefined || figures === undefined)
    return html`<div class="part-panel">
      <p class="part-none">Select a part in the list to see it drawn to scale, with its cut size, strips and areas.</p>
    </div>`;
  return html`<div class="part-panel">
    <header>
      <h2>${row.name === '' ? 'Part without a name' : row.name}</h2>
      <p>${underTitle(book, row, figures)}</p>
    </header>
    ${picture(book, row, figures)}
    ${sizes(book, figures)} ${strips(book, figures)} ${areas(book, row, figures)}
  </div>`;
}

function underTitle(book: ScreenBook, row: PartRow, figures: PartPlanView): string {
  const material = book.products.get(row.materialId)?.name ?? 'no material yet';
  const pieces = figures.quantity === 1 ? '1 piece' : `${book.formats.count(figures.quantity)} pieces`;
  return [row.section, pieces, material].filter((word) => word !== '').join(' · ');
}

function picture(book: ScreenBook, row: PartRow, figures: PartPlanView): TemplateResult {
  const drawing = partDrawingOf(book, row, figures);
  if (drawing === null)
    return html`<p class="part-none">It is drawn as soon as its length and width can be read.</p>`;
  const stretched = notToScale(drawing);
  return html`${partDrawing(drawing)}
    <ul class="part-key" aria-label="Faces and grain">
      ${faceKey('show', 'Show face', finishTone(book, row.showRecipeId), recipeName(book, row.showRecipeId))}
      ${faceKey('back', 'Back face', finishTone(book, row.backRecipeId), recipeName(book, row.backRecipeId))}
      <li><span class="key-grain ${row.grain}" aria-hidden="true"></span>${GRAIN[row.grain]}</li>
      ${stretched === null ? nothing : html`<li>The ${stretched} is drawn larger than to scale.</li>`}
    </ul>`;
}

const GRAIN = {
  along: 'Grain along the length',
  across: 'Grain along the width',
  free: 'May be turned',
} as const;

function faceKey(face: 'show' | 'back', words: string, tone: string | null, name: string): TemplateResult {
  return html`<li>
    <span class="key-face ${face}" aria-hidden="true"
      ><span style="background: ${tone ?? 'transparent'}"></span></span
    ><span>${words}: <b>${name}</b></span>
  </li>`;
}

function sizes({ formats }: ScreenBook, figures: PartPlanView): TemplateResult {
  const at = (field: keyof PartPlanView): string => `parts/${figures.id}/${field}`;
  const length = (field: 'lengthMm' | 'widthMm' | 'cutLengthMm' | 'cutWidthMm', name: string) =>
    figureButton(at(field), formats.length(figures[field]), name);
  return html`<dl class="part-figures">
    <div>
      <dt>Finished</dt>
      <dd>
        ${length('lengthMm', 'Finished length')} × ${length('widthMm', 'Finished width')} ×
        ${figureButton(at('thicknessMm'), formats.thickness(figures.thicknessMm), 'Thickness')}
      </dd>
    </div>
    <div class="lead">
      <dt>Cut</dt>
      <dd>${length('cutLengthMm', 'Cut length')} × ${length('cutWidthMm', 'Cut width')}</dd>
    </div>
  </dl>`;
}

function strips({ formats, products }: ScreenBook, figures: PartPlanView): TemplateResult | typeof nothing {
  if (figures.strips.length === 0) return nothing;
  return html`<h3 id="part-strips">Strips per piece</h3>
    <table class="part-table" aria-labelledby="part-strips">
      <thead>
        <tr><th scope="col" class="head">Edge</th><th scope="col" class="head number">To cover</th><th scope="col" class="head number">Cut to</th></tr>
      </thead>
      <tbody>
        ${figures.strips.map((strip) => {
          const at = `parts/${figures.id}/strips/${strip.id}`;
          const edges = edgesText(strip.id);
          return html`<tr>
            <th scope="row">
              ${edges}<small>${products.get(strip.bandingId)?.shortName ?? strip.bandingId}${strip.closed ? ', all round' : ''}</small>
            </th>
            <td class="number">${figureButton(`${at}/runMm`, formats.length(strip.runMm), `Run of ${edges}`)}</td>
            <td class="number">${figureButton(`${at}/stripMm`, formats.length(strip.stripMm), `Strip for ${edges}`)}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
}

function areas({ formats }: ScreenBook, row: PartRow, figures: PartPlanView): TemplateResult {
  const line = (
    name: string,
    field: 'showFaceM2' | 'backFaceM2' | 'seenEdgeM2' | 'totalFinishM2' | 'totalBandedM',
    lead = false,
  ): TemplateResult => {
    const value = figures[field];
    const text = field === 'totalBandedM' ? formats.run(value) : formats.area(value);
    return html`<div class=${lead ? 'lead' : ''}>
      <dt>${name}</dt>
      <dd>${figureButton(`parts/${figures.id}/${field}`, text, name)}</dd>
    </div>`;
  };
  const pieces = figures.quantity === 1 ? 'this piece' : `all ${formats.count(figures.quantity)} pieces`;
  return html`<h3>Areas per piece</h3>
    <dl class="part-figures">
      ${line('Show face', 'showFaceM2')} ${line('Back face', 'backFaceM2')} ${line('Seen edges', 'seenEdgeM2')}
    </dl>
    <h3>For ${pieces}${row.quantity === '' ? ' (quantity not typed)' : ''}</h3>
    <dl class="part-figures">
      ${line('Banded edge', 'totalBandedM', true)} ${line('Area to finish', 'totalFinishM2', true)}
    </dl>`;
}
