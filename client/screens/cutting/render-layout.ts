import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { CutPlace, CuttingLayout, LayoutOffcut } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { actions } from '../../state/store.ts';
import { placeName, tick } from './cutting-list.ts';
import { grainMatches } from './grain-matches.ts';
import { drawLayout, type Layout, type LayoutView, layoutView, type Material } from './layout-view.ts';
import { narrow } from './narrow.ts';
import type { NumberedPart } from './part-numbers.ts';

/** Widths of the drawing, CSS pixels: beside its lists, and on a phone. */
const WIDE = 700;
const NARROW = 330;
const BOARD_WIDE = 1060;

/** Which of several equal sheets is looked at, by the layout's key. */
const sheetShown = new Map<string, number>();

/** One sheet or board: its drawing, the cuts in their order, its parts to tick off, and its offcuts. */
export function renderLayout(book: ScreenBook, material: Material, layout: Layout): TemplateResult {
  const view = layoutView(book, material, layout);
  const { cuts } = view;
  const sheet = Math.min(cuts === null ? 0 : (sheetShown.get(cuts.key) ?? 0), layout.count - 1);
  const done = new Set(cuts?.done.map(placeName));
  const isDone = (piece: number): boolean => done.has(placeName({ sheet, piece }));
  const slim = narrow();
  const upright = slim && material.kind === 'sheet';
  const { formats } = book;
  const size = `${formats.length(layout.lengthMm)} × ${formats.length(layout.widthMm)}`;
  return html`<li class="layout" data-layout=${layout.id}>
    <div class="layout-picture">
      <h3 class="layout-name">
        <span><b>${layout.count} ×</b> ${layout.label}</span> <span class="layout-size">${size}</span>
      </h3>
      ${drawLayout(view, { width: slim ? NARROW : material.kind === 'board' ? BOARD_WIDE : WIDE, upright, done: isDone })}
    </div>
    <div class="layout-lists">
      ${cuts === null ? nothing : ticked(view, cuts)}
      ${cuts === null || layout.count === 1 ? nothing : chooseSheet(cuts, sheet)}
      <ul class="layout-parts">
        ${repeat(
          view.parts,
          ({ partId }) => partId,
          (part) => partRow(view, part, sheet, isDone),
        )}
      </ul>
      ${matches(view)} ${cuts === null ? nothing : offcuts(view, cuts, sheet)}
      ${
        view.lines.length === 0
          ? nothing
          : html`<details class="cut-order" ?open=${!slim}>
              <summary>Cut order: ${counted(cuts?.cuts.length ?? 0, 'cut')} a ${material.kind}</summary>
              <ol>
                ${view.lines.map(
                  ({ numbers, words, frees }) => html`<li>
                    <span class="cut-number">${numbers}</span>
                    <span>${words}${frees === '' ? nothing : html`<span class="frees">${frees}</span>`}</span>
                  </li>`,
                )}
              </ol>
            </details>`
      }
    </div>
  </li>`;
}

function ticked({ layout }: LayoutView, cuts: CuttingLayout): TemplateResult {
  const all = cuts.parts.length * layout.count;
  return html`<p class="layout-progress" aria-live="polite">${cuts.done.length} of ${all} cut</p>`;
}

/** Buttons for equal sheets, each with how far it is. */
function chooseSheet(cuts: CuttingLayout, shown: number): TemplateResult {
  return html`<div class="choose-sheet" role="group" aria-label="Which of the equal sheets">
    ${Array.from({ length: cuts.sheets }, (_, sheet) => {
      const done = cuts.done.filter((place) => place.sheet === sheet).length;
      return html`<button
        type="button"
        class="button"
        aria-pressed=${sheet === shown ? 'true' : 'false'}
        @click=${() => {
          sheetShown.set(cuts.key, sheet);
          actions.redraw();
        }}
      >
        ${sheet + 1} <small>${done} of ${cuts.parts.length}</small>
      </button>`;
    })}
  </div>`;
}

function partRow(
  view: LayoutView,
  part: NumberedPart,
  sheet: number,
  isDone: (piece: number) => boolean,
): TemplateResult {
  const { book, cuts, fullNameOf, partIds, pieces } = view;
  const { formats } = book;
  const name = fullNameOf(part.partId);
  const own = partIds.flatMap((id, piece) => (id === part.partId ? [piece] : []));
  const turned = pieces.filter((piece) => piece.partId === part.partId && piece.turned).length;
  return html`<li>
    <span class="part-number">${part.number}</span>
    <button type="button" class="link" @click=${() => showPart(part.partId)}>${name}</button>
    <span class="part-size">
      ${part.count} × ${formats.length(part.lengthMm)} × ${formats.length(part.widthMm)}${turned === 0 ? nothing : `, ${turned === part.count ? '' : `${turned} `}turned`}
    </span>
    ${
      cuts === null
        ? nothing
        : html`<span class="ticks" role="group" aria-label="${name}: tick what is cut">
            ${repeat(
              own,
              (piece) => placeName({ sheet, piece }),
              (piece, index) =>
                tickBox(cuts, { sheet, piece }, isDone(piece), `${name} ${index + 1} of ${own.length} cut`),
            )}
          </span>`
    }
  </li>`;
}

function tickBox(cuts: CuttingLayout, place: CutPlace, done: boolean, label: string): TemplateResult {
  return html`<label class="tick">
    <input
      type="checkbox"
      aria-label=${label}
      data-piece="${place.sheet}/${place.piece}"
      .checked=${done}
      @change=${(event: Event) => void tick(cuts, [place], (event.currentTarget as HTMLInputElement).checked)}
    />
  </label>`;
}

/** Which parts of the layout lie side by side so that their grain matches. */
function matches({ layout, nameOf }: LayoutView): TemplateResult | typeof nothing {
  const found = grainMatches(layout.cut);
  if (found.length === 0) return nothing;
  return html`<ul class="grain-matches">
    ${found.map(
      ({ name, partIds }) =>
        html`<li>Grain match <b>${name}</b>, side by side in this order: ${partIds.map(nameOf).join(', ')}</li>`,
    )}
  </ul>`;
}

/** What is left of the sheet looked at; it can be put in stock once the sheet is cut. */
function offcuts(view: LayoutView, cuts: CuttingLayout, sheet: number): TemplateResult | typeof nothing {
  if (cuts.offcuts.length === 0) return nothing;
  const { book, material } = view;
  const isCut = cuts.done.filter((place) => place.sheet === sheet).length === cuts.parts.length;
  const waiting = `offcut-wait-${cuts.key}`;
  return html`<div class="offcuts">
    <h4>Offcuts${cuts.sheets === 1 ? '' : ` of ${material.kind} ${sheet + 1}`}</h4>
    <ul>
      ${cuts.offcuts.map((offcut) => {
        const size = `${book.formats.length(offcut.lengthMm)} × ${book.formats.length(offcut.widthMm)}`;
        const name = `${offcut.count === 1 ? 'offcut' : `${offcut.count} offcuts`} ${size} of ${material.name}`;
        return html`<li>
          <span>${offcut.count === 1 ? nothing : `${offcut.count} × `}${size}</span>
          ${
            offcut.kept.includes(sheet)
              ? html`<span class="kept" aria-label="${name} on hand"
                  >${isCut ? 'on hand' : 'on hand once the sheet is cut again'}</span
                >`
              : html`<button
                  type="button"
                  class="button"
                  aria-label="Keep ${name}"
                  aria-disabled=${isCut ? 'false' : 'true'}
                  aria-describedby=${isCut ? nothing : waiting}
                  @click=${() => isCut && void keep(cuts, sheet, offcut, name)}
                >
                  Keep
                </button>`
          }
        </li>`;
      })}
    </ul>
    ${isCut ? nothing : html`<p class="offcut-wait" id=${waiting}>Keep them once all parts of the ${material.kind} are ticked.</p>`}
  </div>`;
}

async function keep(
  { key: layout }: CuttingLayout,
  sheet: number,
  { lengthMm, widthMm, count }: LayoutOffcut,
  name: string,
): Promise<void> {
  if ((await actions.keepOffcut({ layout, sheet, lengthMm, widthMm })) === null) return;
  actions.say({
    kind: 'info',
    text: `The ${name} ${count === 1 ? 'is' : 'are'} on hand now, for parts that come on top.`,
    wayOut: 'Undo takes it back; the list of what is on hand is under Buy.',
  });
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

function showPart(id: string): void {
  actions.selectPart(id);
  actions.goTo({ table: 'parts', id, field: 'name' });
}
