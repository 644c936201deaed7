import './print-cutting.css';
import { html, nothing, render, type TemplateResult } from 'lit-html';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { getState } from '../../state/store.ts';
import { type PieceLabel, pieceLabels } from './label-data.ts';
import { drawLayout, type LayoutView, layoutView } from './layout-view.ts';

/** The cutting plan on paper: a page for each layout, then labels for the pieces. Made only while printing. */

export type Paper = 'all' | 'sheets' | 'labels';

/** Width of a drawing on paper, units; text of 12 units is then about 9 points high on A4 and Letter. */
const DRAWING = 700;
/** From here up the lists are set smaller, so that a layout stays on one page. */
const MANY_LINES = 36;

let wanted: Paper = 'all';

/** Opens the print dialog for the sheets or the labels alone. */
export function printCutting(paper: Paper): void {
  wanted = paper;
  window.print();
}

addEventListener('beforeprint', () => {
  const state = getState();
  const book = state.screen === 'cutting' ? screenBook(state) : null;
  if (book === null) return;
  const paper = document.createElement('div');
  paper.id = 'cutting-paper';
  document.body.append(paper);
  render(papers(book, wanted), paper);
});

addEventListener('afterprint', () => {
  wanted = 'all';
  document.querySelector('#cutting-paper')?.remove();
});

function papers(book: ScreenBook, paper: Paper): TemplateResult {
  const date = new Intl.DateTimeFormat(undefined, { dateStyle: 'long' }).format(new Date());
  const views = book.project.plan.materials.flatMap((material) =>
    material.layouts.map((layout) => layoutView(book, material, layout)),
  );
  const labels = paper === 'sheets' ? [] : pieceLabels(book);
  return html`${paper === 'labels' ? nothing : views.map((view) => sheetPage(view, date))}
  ${
    labels.length === 0
      ? nothing
      : html`<section class="paper-page labels-page">
          ${pageHead(book, date, `Labels: ${labels.length} ${labels.length === 1 ? 'piece' : 'pieces'}`)}
          <ul class="paper-labels">
            ${labels.map(labelOf)}
          </ul>
        </section>`
  }`;
}

function pageHead(book: ScreenBook, date: string, title: string | TemplateResult): TemplateResult {
  return html`<header class="paper-head">
    <p><b>${book.settings.name}</b><span>${date}</span></p>
    <h2>${title}</h2>
  </header>`;
}

function sheetPage(view: LayoutView, date: string): TemplateResult {
  const { book, material, layout, parts, fullNameOf, lines } = view;
  const { formats } = book;
  const size = `${formats.length(layout.lengthMm)} × ${formats.length(layout.widthMm)}`;
  const many = lines.length + parts.length > MANY_LINES;
  return html`<section class="paper-page sheet-page">
    ${pageHead(book, date, html`${material.name}: ${layout.count} × ${layout.label} <small>${size}</small>`)}
    ${drawLayout(view, { width: DRAWING, upright: false, done: () => false })}
    <div class=${many ? 'paper-lists many' : 'paper-lists'}>
      <h3>Parts of each ${material.kind}</h3>
      <ul>
        ${parts.map(
          (part) => html`<li>
            <span class="paper-number">${part.number}</span>
            <span
              >${fullNameOf(part.partId)}: ${part.count} × ${formats.length(part.lengthMm)} × ${formats.length(part.widthMm)}
              ${Array.from({ length: part.count * layout.count }, () => html`<span class="paper-box"></span> `)}</span
            >
          </li>`,
        )}
      </ul>
      <h3>Cut order</h3>
      <ol>
        ${lines.map(
          ({ numbers, words, frees }) => html`<li>
            <span class="paper-number">${numbers}</span>
            <span>${words}${frees === '' ? nothing : html` <span class="frees">→ ${frees}</span>`}</span>
          </li>`,
        )}
      </ol>
    </div>
  </section>`;
}

function labelOf(label: PieceLabel): TemplateResult {
  const { name, section, piece, cutSize, finishedSize, material, edges, finish } = label;
  return html`<li>
    <p class="label-name"><b>${name}</b><span>${piece}</span></p>
    ${section === '' ? nothing : html`<p>${section}</p>`}
    <p class="label-size">${cutSize}</p>
    ${finishedSize === '' ? nothing : html`<p>finished ${finishedSize}</p>`}
    <p>${material}</p>
    ${edges.map((line) => html`<p>${line}</p>`)}
    <p>${finish}</p>
  </li>`;
}
