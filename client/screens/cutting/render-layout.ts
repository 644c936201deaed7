import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import type { PlanView } from '../../../server/http/contract.ts';
import { type SheetPiece, sheetPieces } from '../../drawing/sheet-pieces.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { actions } from '../../state/store.ts';
import { type NumberedPart, partNumbers } from './part-numbers.ts';

type Material = PlanView['materials'][number];
type Layout = Material['layouts'][number];

/** Below this share of the stock, percent, a part's name would not fit; its number stands alone. */
const NAMED_FROM = { width: 17, height: 11 };
/** From here up there is room for its size as well. */
const SIZED_FROM = { width: 24, height: 20 };

/** One sheet or board with what is cut from it, to scale, and its parts by number. */
export function renderLayout(book: ScreenBook, material: Material, layout: Layout): TemplateResult {
  const { formats, settings, project } = book;
  const pieces = sheetPieces(layout, settings.kerfMm);
  const parts = partNumbers(pieces);
  const names = new Map(
    project.rows.parts.map(({ id, name }) => [id, name === '' ? 'part without a name' : name]),
  );
  const count = parts.reduce((sum, part) => sum + part.count, 0);
  const size = `${formats.length(layout.lengthMm)} × ${formats.length(layout.widthMm)}`;
  return html`<li class="layout">
    <p class="layout-name">
      <b>${layout.count} ×</b> ${layout.label}
      <span class="layout-size">${size}</span>
    </p>
    <svg
      class="layout-drawing"
      role="img"
      aria-label="${material.name}, ${layout.label}: ${count} parts. ${parts.map((part) => `${part.count} ${names.get(part.partId)}`).join(', ')}."
      style="aspect-ratio: ${material.kind === 'board' ? '24 / 1' : `${layout.lengthMm} / ${layout.widthMm}`}"
    >
      <rect class="stock" width="100%" height="100%" />
      ${pieces.map((piece) => drawPiece(formats, piece, parts, names))}
    </svg>
    <ul class="layout-parts">
      ${parts.map(
        (part) => html`<li>
          <span class="part-number">${part.number}</span>
          <button type="button" class="link" @click=${() => showPart(part.partId)}>${names.get(part.partId) ?? part.partId}</button>
          <span>${part.count} × ${formats.length(part.lengthMm)} × ${formats.length(part.widthMm)}</span>
        </li>`,
      )}
    </ul>
  </li>`;
}

function drawPiece(
  formats: ScreenBook['formats'],
  piece: SheetPiece,
  parts: readonly NumberedPart[],
  names: ReadonlyMap<string, string>,
): SVGTemplateResult {
  const { x, y, width, height } = piece;
  const number = parts.find(({ partId }) => partId === piece.partId)?.number;
  if (number === undefined)
    return svg`<rect class="offcut" x="${x}%" y="${y}%" width="${width}%" height="${height}%" />`;
  const named = width >= NAMED_FROM.width && height >= NAMED_FROM.height;
  const sized = width >= SIZED_FROM.width && height >= SIZED_FROM.height;
  const name = names.get(piece.partId ?? '') ?? '';
  // A drawing of its own, so that a name too long for its part ends at the part's edge.
  return svg`<svg x="${x}%" y="${y}%" width="${width}%" height="${height}%">
    <title>${name}${piece.turned ? ', turned' : ''}</title>
    <rect class="part" width="100%" height="100%" />
    ${named ? svg`<text class="wide-label" x="50%" y="50%" dy=${sized ? '-0.5em' : 0}>${number} · ${name}</text>` : nothing}
    ${sized ? svg`<text class="size-label" x="50%" y="50%" dy="0.85em">${formats.length(piece.lengthMm)} × ${formats.length(piece.widthMm)}</text>` : nothing}
    <text class=${named ? 'narrow-label' : ''} x="50%" y="50%">${number}</text>
  </svg>`;
}

function showPart(id: string): void {
  actions.selectPart(id);
  actions.goTo({ table: 'parts', id, field: 'name' });
}
