import { html, nothing, type TemplateResult } from 'lit-html';
import type { PartRow } from '../../../server/http/contract.ts';
import { EDGE_ORDER } from '../../drawing/edge-order.ts';
import { recipeName } from '../../drawing/part-drawing-of.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, paperHead } from '../../paper/print-paper.ts';

/** The part list for the saw and the bench: every row with its finished and its cut size, by section. */
addPaper({ name: 'parts', screen: 'parts', make: paperParts });

type PartPlan = ScreenBook['project']['plan']['parts'][number];

function paperParts(book: ScreenBook): TemplateResult {
  const { project, formats } = book;
  const { parts } = project.rows;
  const plans = new Map(project.plan.parts.map((plan) => [plan.id, plan]));
  const sections = [...new Set(parts.map(({ section }) => section))];
  const { pieces, bandedM, finishM2 } = project.plan.totals;
  return html`${paperHead(
    book,
    'Part list',
    html`<p>
      ${formats.count(pieces)} pieces in ${parts.length === 1 ? '1 row' : `${parts.length} rows`}, ${formats.run(bandedM)} of
      banded edge, ${formats.area(finishM2)} to finish
    </p>`,
  )}
  ${sections.map(
    (section) => html`<section>
      <h2>${section === '' ? (sections.length === 1 ? nothing : 'Without a section') : section}</h2>
      <table class="even">
        <thead>
          <tr>
            <th style="width: 23%">Part</th>
            <th class="number" style="width: 7%">Pieces</th>
            <th class="number" style="width: 19%">Finished</th>
            <th class="number" style="width: 17%">Cut</th>
            <th style="width: 13%">Material</th>
            <th>Edges and finish</th>
          </tr>
        </thead>
        <tbody>
          ${parts.filter((part) => part.section === section).map((part) => partLine(book, part, plans.get(part.id)))}
        </tbody>
      </table>
    </section>`,
  )}`;
}

function partLine(book: ScreenBook, part: PartRow, plan: PartPlan | undefined): TemplateResult {
  const { formats, products } = book;
  const size = (length: number | null, width: number | null): string =>
    length === null || width === null ? 'not known' : `${formats.length(length)} × ${formats.length(width)}`;
  const cut = plan === undefined ? '' : size(plan.cutLengthMm, plan.cutWidthMm);
  const finished = plan === undefined ? '' : size(plan.lengthMm, plan.widthMm);
  const show = recipeName(book, part.showRecipeId);
  const back = recipeName(book, part.backRecipeId);
  const round = part.shape === 'round' ? 'round' : '';
  return html`<tr>
    <td>
      <b>${part.name === '' ? 'part without a name' : part.name}</b>${round === '' ? nothing : `, ${round}`}
      ${part.note === '' ? nothing : html`<small>${part.note}</small>`}
    </td>
    <td class="number">${plan === undefined ? part.quantity : formats.count(plan.quantity)}</td>
    <td class="number">${finished}</td>
    <td class="number">${cut === finished ? 'the same' : cut}</td>
    <td>${products.get(part.materialId)?.shortName ?? 'not chosen'}</td>
    <td>
      ${edgeWords(book, plan)}
      <small>${show === back ? show : `show face ${show}, back ${back}`}</small>
    </td>
  </tr>`;
}

/** "front, left: birch veneer"; edges with the same band together. */
function edgeWords({ products }: ScreenBook, plan: PartPlan | undefined): string {
  const byBand = new Map<string, string[]>();
  for (const edge of EDGE_ORDER) {
    const treatment = plan?.edges.find(({ id }) => id === edge)?.treatment ?? 'hidden';
    if (treatment === 'hidden' || treatment === 'bare') continue;
    byBand.set(treatment, [...(byBand.get(treatment) ?? []), edge]);
  }
  if (byBand.size === 0) return 'no edge is banded';
  return [...byBand]
    .map(
      ([id, edges]) =>
        `${edges.length === EDGE_ORDER.length ? 'all edges' : edges.join(', ')}: ${products.get(id)?.shortName ?? id}`,
    )
    .join('; ');
}
