import './layout-drawing.css';
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import type { SawCut } from '../../server/http/contract.ts';
import type { StockLayout } from '../../server/planning/plan-output.ts';
import { type FittedLabel, fitLabel, type LabelWords } from './fit-label.ts';
import { grainLines } from './grain-lines.ts';
import { point } from './part-outline.ts';
import { type Box, placeMarks } from './place-marks.ts';
import { type SheetPiece, sheetPieces } from './sheet-pieces.ts';

export interface LayoutDrawing {
  readonly layout: Pick<StockLayout, 'lengthMm' | 'widthMm' | 'cut'>;
  readonly kind: 'sheet' | 'board';
  readonly kerfMm: number;
  readonly cuts: readonly SawCut[];
  /** Width of the drawing in units of about one screen pixel. */
  readonly width: number;
  /** The sheet's length runs down, for narrow screens. */
  readonly upright: boolean;
  /** Words for a piece; `index` is its place among the parts, null for an offcut. */
  readonly words: (piece: SheetPiece, index: number | null) => LabelWords;
  /** Whether the piece has a grain; it runs along the sheet. */
  readonly grained: (piece: SheetPiece) => boolean;
  readonly done: (index: number) => boolean;
  /** The drawing in a sentence or two, for those who hear it. */
  readonly description: string;
}

/** A drawing is at most this many times as high as wide, lying or upright. */
const MOST_HIGH = { lying: 0.7, upright: 2.05 };
/** A board is drawn at least this high, so that its parts can be numbered. */
const LEAST_BAR = 30;
const LEAST_LINE = 1.2;
/** The mark of a turned part and the least piece that carries it. */
const TURNED = { size: 9, room: 24 };

interface Drawn extends Box {
  readonly piece: SheetPiece;
  readonly index: number | null;
  readonly label: FittedLabel | null;
}

/** One sheet or board to scale with its trim, parts, offcuts, and the saw cuts by number. */
export function layoutDrawing(drawing: LayoutDrawing): TemplateResult {
  const { layout, kind, kerfMm, upright } = drawing;
  const [alongMm, downMm] = upright ? [layout.widthMm, layout.lengthMm] : [layout.lengthMm, layout.widthMm];
  const most = drawing.width * (upright ? MOST_HIGH.upright : MOST_HIGH.lying);
  const scale = Math.min(drawing.width / alongMm, most / downMm);
  const width = alongMm * scale;
  const height = kind === 'board' ? Math.max(downMm * scale, LEAST_BAR) : downMm * scale;
  const box = (x: number, y: number, w: number, h: number): Box =>
    upright
      ? { x: (y / 100) * width, y: (x / 100) * height, width: (h / 100) * width, height: (w / 100) * height }
      : { x: (x / 100) * width, y: (y / 100) * height, width: (w / 100) * width, height: (h / 100) * height };
  let parts = 0;
  const drawn = sheetPieces(layout, kerfMm).map((piece): Drawn => {
    const index = piece.type === 'part' ? parts++ : null;
    const place = box(piece.x, piece.y, piece.width, piece.height);
    return {
      ...place,
      piece,
      index,
      label: fitLabel(drawing.words(piece, index), place.width, place.height),
    };
  });
  const percent = (mm: number, of: number): number => (Math.min(Math.max(mm, 0), of) / of) * 100;
  const lines = drawing.cuts
    .filter((cut) => cut.kind !== 'trim')
    .map((cut) => {
      const at = cut.atMm + kerfMm / 2;
      const line =
        cut.runs === 'length'
          ? box(
              percent(cut.fromMm, layout.lengthMm),
              percent(at, layout.widthMm),
              percent(cut.toMm - cut.fromMm, layout.lengthMm),
              0,
            )
          : box(
              percent(at, layout.lengthMm),
              percent(cut.fromMm, layout.widthMm),
              0,
              percent(cut.toMm - cut.fromMm, layout.widthMm),
            );
      return {
        text: String(cut.number),
        x1: line.x,
        y1: line.y,
        x2: line.x + line.width,
        y2: line.y + line.height,
      };
    });
  const trim = {
    x: ((layout.lengthMm - layout.cut.lengthMm) / 2 / layout.lengthMm) * 100,
    y: ((layout.widthMm - layout.cut.widthMm) / 2 / layout.widthMm) * 100,
  };
  const usable = box(trim.x, trim.y, 100 - 2 * trim.x, 100 - 2 * trim.y);
  const marks = placeMarks(lines, drawn.flatMap(labelBox), { x: 0, y: 0, width, height });
  return html`<svg
    class="layout-drawing"
    viewBox="-1 -1 ${round(width + 2)} ${round(height + 2)}"
    style="max-width: ${round(width + 2)}px"
    role="img"
    aria-label=${drawing.description}
  >
    <rect class="stock" width=${round(width)} height=${round(height)} />
    ${rect('usable', usable)} ${drawn.map((one) => drawPiece(drawing, one))}
    <g class="kerf" style="stroke-width: ${round(Math.max(LEAST_LINE, kerfMm * scale))}">
      ${lines.map(({ x1, y1, x2, y2 }) => svg`<path d="M${point([x1, y1])}L${point([x2, y2])}" />`)}
    </g>
    ${drawn.map((one) => drawLabel(drawing, one))}
    ${marks.map(
      ({ text, x, y, radius }) => svg`<g class="cut-mark" transform="translate(${round(x)} ${round(y)})">
        <circle r=${radius} /><text style="font-size: ${radius > 6 ? 9.5 : 8}px">${text}</text>
      </g>`,
    )}
  </svg>`;
}

function drawPiece(drawing: LayoutDrawing, one: Drawn): SVGTemplateResult {
  const { piece, index, x, y, width, height } = one;
  if (index === null) return rect('offcut', one);
  const done = drawing.done(index);
  const grain = drawing.grained(piece) ? grainLines(drawing.upright ? 'across' : 'along', width, height) : [];
  const corner = piece.turned && Math.min(width, height) >= TURNED.room && !reachesCorner(one);
  return svg`<g class=${done ? 'piece done' : 'piece'}>
    ${rect('part', one)}
    <g transform="translate(${round(x)} ${round(y)})">
      ${grain.map(
        ({ from, to, dashes, start }) =>
          svg`<path class="grain" d="M${point(from)}L${point(to)}" stroke-dasharray=${dashes} stroke-dashoffset=${start} />`,
      )}
      ${
        corner
          ? svg`<path class="turned-mark" transform="translate(${round(width - TURNED.size - 4)} 4)" d=${TURNED_PATH} />`
          : nothing
      }
    </g>
  </g>`;
}

/** A quarter turn with its arrow head, 9 by 9. */
export const TURNED_PATH = 'M0 9A9 9 0 0 1 8 1M8 1L3.8 .6M8 1L6.600 5';

function drawLabel(drawing: LayoutDrawing, one: Drawn): SVGTemplateResult | typeof nothing {
  const { label, x, y, width, height } = one;
  if (label === null) return nothing;
  const total = label.lines.reduce((sum, { size }) => sum + size * 1.25, 0);
  let top = -total / 2;
  const of = one.index === null ? 'of-offcut' : drawing.done(one.index) ? 'of-done' : '';
  return svg`<g class="label ${of}" transform="translate(${round(x + width / 2)} ${round(y + height / 2)})${label.turned ? ' rotate(-90)' : ''}">
    ${label.lines.map(({ text, size, kind }) => {
      const middle = top + (size * 1.25) / 2;
      top += size * 1.25;
      return svg`<text class="${kind}-text" y=${round(middle)} style="font-size: ${size}px">${text}</text>`;
    })}
  </g>`;
}

function labelBox({ label, x, y, width, height }: Drawn): Box[] {
  if (label === null) return [];
  return [
    {
      x: x + (width - label.width) / 2,
      y: y + (height - label.height) / 2,
      width: label.width,
      height: label.height,
    },
  ];
}

function reachesCorner({ label, width, height }: Drawn): boolean {
  const room = TURNED.size + 6;
  return label !== null && label.width > width - 2 * room && label.height > height - 2 * room;
}

function rect(name: string, { x, y, width, height }: Box): SVGTemplateResult {
  return svg`<rect class=${name} x=${round(x)} y=${round(y)} width=${round(width)} height=${round(height)} />`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
