import { html, nothing, type TemplateResult } from 'lit-html';
import type { PlanView } from '../../../server/http/contract.ts';
import { drawnRolls } from '../../drawing/roll-segments.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, paperHead } from '../../paper/print-paper.ts';
import { stripName } from './strip-name.ts';

/** Which strips are cut from which roll, with a box to tick for each strip. */
addPaper({ name: 'banding', screen: 'banding', make: paperBanding });

type Banding = PlanView['banding'][number];

/** A longer row of boxes is no help; the count says it. */
const MOST_BOXES = 24;
const MM_PER_M = 1000;

function paperBanding(book: ScreenBook): TemplateResult | null {
  const { banding } = book.project.plan;
  if (banding.length === 0) return null;
  return html`${paperHead(book, 'Edge banding', html`<p>Strips cannot be joined: cut each whole from its roll, longest first.</p>`)}
  ${banding.map((one) => bandingPart(book, one))}`;
}

function bandingPart(book: ScreenBook, banding: Banding): TemplateResult {
  const { formats } = book;
  return html`<section>
    <h2>
      ${banding.name}
      <small>${formats.run(banding.neededM)} needed with overhang and spares, ${formats.run(banding.boughtM)} bought</small>
    </h2>
    ${banding.rolls.map((roll, index) => rollPart(book, roll, index + 1))}
  </section>`;
}

function rollPart(book: ScreenBook, roll: Banding['rolls'][number], number: number): TemplateResult {
  const { formats, project } = book;
  const segments = drawnRolls([roll])[0]?.segments ?? [];
  return html`<h3>${number}. ${roll.label}, ${formats.run(roll.leftMm / MM_PER_M)} left over</h3>
    <table class="even">
      <thead>
        <tr>
          <th class="number" style="width: 8%">Strips</th>
          <th class="number" style="width: 16%">Length</th>
          <th>For</th>
          <th style="width: 32%">Cut</th>
        </tr>
      </thead>
      <tbody>
        ${segments.map(
          (segment) => html`<tr>
            <td class="number">${segment.count}</td>
            <td class="number">${formats.length(segment.lengthMm)}</td>
            <td>${stripName(project.rows.parts, segment)}</td>
            <td class="boxes">${
              segment.count > MOST_BOXES
                ? nothing
                : Array.from({ length: segment.count }, () => html`<span class="tick-box"></span> `)
            }</td>
          </tr>`,
        )}
      </tbody>
    </table>`;
}
