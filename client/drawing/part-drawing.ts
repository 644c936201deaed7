import './drawing.css';
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import type { EdgeName } from '../../server/planning/project-input.ts';
import { type DogEar, dogEar } from './dog-ear.ts';
import { EDGE_ORDER } from './edge-order.ts';
import { grainLines } from './grain-lines.ts';
import { edgePath, outlinePath, type PartOutline, partOutline, point } from './part-outline.ts';

export interface DrawnEdge {
  readonly kind: 'hidden' | 'bare' | 'banded';
  /** Short name of the banding; empty when not banded. */
  readonly band: string;
  /** CSS colour of the banding. */
  readonly tone: string;
}

export interface PartDrawing {
  /** Unique on the page. */
  readonly id: string;
  readonly name: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly cornersMm: readonly [number, number, number, number];
  readonly grain: 'along' | 'across' | 'free';
  readonly edges: Readonly<Record<EdgeName, DrawnEdge>>;
  /** CSS colours of the finish on each face; null is raw wood. */
  readonly showTone: string | null;
  readonly backTone: string | null;
  readonly lengthText: string;
  readonly widthText: string;
  /** The drawing in one or two sentences, for those who hear it. */
  readonly description: string;
}

/** Drawing units around the part: room for ribbon, edge name and dimension line. */
const MARGIN = { left: 60, right: 36, top: 34, bottom: 60 };
const SHEET_WIDTH = 320;
const MOST_HEIGHT = 220;
/** A narrower side is drawn this wide, and `notToScale` says so. */
const LEAST_SIDE = 16;
const ROOM = { width: SHEET_WIDTH - MARGIN.left - MARGIN.right, height: MOST_HEIGHT, least: LEAST_SIDE };
/** A dimension's figure interrupts its line, unless the line is shorter than this; then it stands outside. */
const LEAST_INTERRUPTED = 64;
/** From the outline to the middle of a band's ribbon. */
const RIBBON = 6;
const NAME_AWAY = 21;
const DIMENSION_AWAY = 44;

/** The part to scale, seen on its show face, front edge at the bottom. */
export function partDrawing(part: PartDrawing): TemplateResult {
  const outline = partOutline(part, ROOM);
  const { width, height } = outline;
  const sheetHeight = height + MARGIN.top + MARGIN.bottom;
  const left = MARGIN.left + (SHEET_WIDTH - MARGIN.left - MARGIN.right - width) / 2;
  const clip = `outline-${part.id}`;
  return html`<svg
    class="part-drawing"
    viewBox="0 0 ${SHEET_WIDTH} ${Math.round(sheetHeight)}"
    role="img"
    aria-labelledby="drawn-${part.id} described-${part.id}"
  >
    <title id="drawn-${part.id}">${part.name}, seen on its show face</title>
    <desc id="described-${part.id}">${part.description}</desc>
    <g transform="translate(${left} ${MARGIN.top})">
      <clipPath id=${clip}><path d=${outlinePath(outline)} /></clipPath>
      ${face(part, outline, clip)} ${EDGE_ORDER.map((edge) => drawnEdge(part, outline, edge))}
      ${dimensions(part, outline)}
    </g>
  </svg>`;
}

/** The side that had to be drawn wider than to scale; null when the whole drawing is true. */
export function notToScale(part: PartDrawing): PartOutline['stretched'] {
  return partOutline(part, ROOM).stretched;
}

function face(part: PartDrawing, outline: PartOutline, clip: string): SVGTemplateResult {
  const ear = dogEar(outline);
  return svg`<g clip-path="url(#${clip})">
    <path class="wood" d=${outlinePath(outline)} />
    ${part.showTone === null ? nothing : svg`<path class="wash" d=${outlinePath(outline)} style="fill: ${part.showTone}" />`}
    ${grainLines(part.grain, outline.width, outline.height).map(
      ({ from, to, dashes, start }) =>
        svg`<path class="grain" d="M${point(from)}L${point(to)}" stroke-dasharray=${dashes} stroke-dashoffset=${start} />`,
    )}
    ${backCorner(ear, part.backTone)}
  </g>`;
}

function backCorner({ folded, flap }: DogEar, tone: string | null): SVGTemplateResult {
  const shape = (points: DogEar['flap']): string => `M${points.map(point).join('L')}Z`;
  return svg`<path class="folded" d=${shape(folded)} />
    <path class="wood flap" d=${shape(flap)} />
    <path class="wash flap" d=${shape(flap)} style="fill: ${tone ?? 'none'}" />`;
}

function drawnEdge(part: PartDrawing, outline: PartOutline, edge: EdgeName): SVGTemplateResult {
  const { kind, band, tone } = part.edges[edge];
  const words = kind === 'banded' ? `${edge} · ${band}` : kind === 'bare' ? `${edge} · bare` : edge;
  return svg`${
    kind === 'banded'
      ? svg`<path class="ribbon-case" d=${edgePath(outline, edge, RIBBON)} />
          <path class="ribbon" d=${edgePath(outline, edge, RIBBON)} style="stroke: ${tone}" />`
      : nothing
  }<path class="edge ${kind}" d=${edgePath(outline, edge)} />
  <text class="edge-name ${kind}" transform=${namePlace(outline, edge)}>${words}</text>`;
}

/** Names stand outside, along their edge; the two at the sides are turned. */
function namePlace({ width, height }: PartOutline, edge: EdgeName): string {
  if (edge === 'front') return `translate(${width / 2} ${height + NAME_AWAY + 3})`;
  if (edge === 'back') return `translate(${width / 2} ${-NAME_AWAY + 6})`;
  if (edge === 'left') return `translate(${-NAME_AWAY + 5} ${height / 2}) rotate(-90)`;
  return `translate(${width + NAME_AWAY + 2} ${height / 2}) rotate(-90)`;
}

function dimensions(
  { lengthText, widthText }: PartDrawing,
  { width, height }: PartOutline,
): SVGTemplateResult {
  const below = height + DIMENSION_AWAY;
  const aside = -DIMENSION_AWAY;

  return svg`<g class="dimension">
    <path d="M0 ${below - 5}v10M${width} ${below - 5}v10M0 ${below}H${width}" />
    <text transform="translate(${width / 2} ${width < LEAST_INTERRUPTED ? below + 14 : below + 4})">${lengthText}</text>
    <path d="M${aside - 5} 0h10M${aside - 5} ${height}h10M${aside} 0V${height}" />
    <text transform="translate(${height < LEAST_INTERRUPTED ? aside - 5 : aside + 4} ${height / 2}) rotate(-90)">${widthText}</text>
  </g>`;
}
