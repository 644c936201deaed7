import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import type { PlanView } from '../../../server/http/contract.ts';
import { type DrawnRoll, drawnRolls, type RollSegment } from '../../drawing/roll-segments.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { productSwatch } from '../parts/product-swatch.ts';
import { stripName } from './strip-name.ts';

type Banding = PlanView['banding'][number];
type Roll = Banding['rolls'][number];

/** The rolls of one banding, all to one scale, with the strips cut from each. */
export function renderRolls(book: ScreenBook, banding: Banding): TemplateResult | typeof nothing {
  if (banding.rolls.length === 0) return nothing;
  const product = book.products.get(banding.id);
  const tone = product === undefined ? 'var(--birch)' : productSwatch(product);
  const drawn = drawnRolls(banding.rolls);
  return html`<section class="rolls-section" aria-label="Rolls of ${banding.name}" style="--tone: ${tone}">
    <div class="rolls-head">
      <h3 class="group-title">How the rolls are cut</h3>
      <ul class="rolls-key" aria-label="Key">
        <li><span class="even"></span>strips</li>
        <li><span class="spare"></span>spare</li>
        <li><span class="left"></span>left over</li>
      </ul>
    </div>
    <ol class="rolls">
      ${banding.rolls.map((roll, index) => {
        const shape = drawn[index];
        return shape === undefined ? nothing : renderRoll(book, roll, shape, index + 1);
      })}
    </ol>
  </section>`;
}

function renderRoll(
  { formats, project }: ScreenBook,
  roll: Roll,
  shape: DrawnRoll,
  number: number,
): TemplateResult {
  const name = (strip: { partId: string | null; stripId: string | null }) =>
    stripName(project.rows.parts, strip);
  const pieces = roll.strips.reduce((sum, strip) => sum + strip.count, 0);
  const words = (segment: RollSegment): string =>
    `${segment.count} × ${name(segment)}, ${formats.length(segment.lengthMm)}`;
  const left = formats.run(roll.leftMm / 1000);
  return html`<li>
    <p class="roll-name">
      <b>${number}</b> ${roll.label}
      <span class="roll-left">${left} left</span>
    </p>
    <svg class="roll-bar" role="group" aria-label="${pieces} strips on ${roll.label}, ${left} left">
      ${shape.segments.map((segment, index) => drawSegment(segment, index, words(segment)))}
      <rect class="left" x="${shape.left.start}%" width="${shape.left.width}%" y="0" height="100%" />
    </svg>
    <div class="roll-foot">
      <details>
        <summary>${pieces === 1 ? '1 strip' : `${pieces} strips`}</summary>
        <ul>
          ${shape.segments.map((segment) => html`<li>${words(segment)}</li>`)}
        </ul>
      </details>
      <p class="roll-said" aria-hidden="true"></p>
    </div>
  </li>`;
}

function drawSegment(segment: RollSegment, index: number, words: string): SVGTemplateResult {
  const kind = segment.partId === null ? 'spare' : index % 2 === 0 ? 'even' : 'odd';
  return svg`<g
    class="strip ${kind}"
    tabindex="0"
    role="img"
    aria-label=${words}
    @focus=${(event: Event) => say(event, words)}
    @blur=${(event: Event) => say(event, '')}
    @mouseenter=${(event: Event) => say(event, words)}
    @mouseleave=${(event: Event) => say(event, '')}
  >
    <rect x="${segment.start}%" width="${segment.width}%" y="0" height="100%" />
    ${segment.cuts.map((at) => svg`<line x1="${at}%" x2="${at}%" y1="0" y2="100%" />`)}
  </g>`;
}

/** Writes under the bar what the pointer or the focus is on; the line is always there, so nothing moves. */
function say(event: Event, words: string): void {
  const line = (event.currentTarget as Element).closest('li')?.querySelector('.roll-said');
  if (line !== null && line !== undefined) line.textContent = words;
}
