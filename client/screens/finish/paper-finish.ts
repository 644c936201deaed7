import { html, nothing, type TemplateResult } from 'lit-html';
import type { PlanView } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, paperHead } from '../../paper/print-paper.ts';
import { CAUTIONS } from './render-cautions.ts';
import { METHOD_WORDS, STEP_WORDS } from './words.ts';

/** The recipes for the bench: every coat in its order with what to pour out, and a box to tick. */
addPaper({ name: 'finish', screen: 'finish', make: paperFinish });

type RecipePlan = PlanView['recipes'][number];
type Coat = RecipePlan['coats'][number];

function paperFinish(book: ScreenBook): TemplateResult | null {
  const { recipes } = book.project.plan;
  if (recipes.length === 0) return null;
  return html`${paperHead(
    book,
    'Finish',
    html`<p>Reckoned with ${book.settings.coverageChoice} coverage; the amounts hold what stays in brush, tray or gun.</p>`,
  )}
  ${recipes.map((recipe) => recipePart(book, recipe))}
  <section>
    <h3>Before you open a can</h3>
    <ul>${CAUTIONS.map((caution) => html`<li>${caution}</li>`)}</ul>
  </section>`;
}

function recipePart(book: ScreenBook, recipe: RecipePlan): TemplateResult {
  const { formats } = book;
  return html`<section>
    <h2>${recipe.name}<small>${formats.area(recipe.areaM2)} a coat</small></h2>
    <table>
      <thead>
        <tr>
          <th style="width: 6mm"><span class="visually-hidden">Done</span></th>
          <th style="width: 20%">Step</th>
          <th>With</th>
          <th class="number">Amount</th>
          <th style="width: 16%">Date</th>
        </tr>
      </thead>
      <tbody>${recipe.coats.map((coat) => coatLine(book, coat))}</tbody>
    </table>
  </section>`;
}

function coatLine({ formats }: ScreenBook, coat: Coat): TemplateResult {
  const { kind, number, name, method, litres, pieces, thinnerLitres, shares, mixes } = coat;
  const amount =
    method === null ? (pieces === null ? '' : `${formats.count(pieces)} pcs`) : formats.volume(litres);
  const parts = [
    ...(shares.length > 1 ? shares.map((share) => `${share.name} ${formats.volume(share.litres)}`) : []),
    ...(shares.length <= 1 && (thinnerLitres ?? 0) > 0 ? [`thinner ${formats.volume(thinnerLitres)}`] : []),
    ...(mixes !== null && mixes > 1 ? [`in ${formats.count(mixes)} mixes within the pot life`] : []),
  ];
  return html`<tr>
    <td><span class="tick-box"></span></td>
    <td><b>${STEP_WORDS[kind]}</b>${number > 1 ? ` ${number}` : nothing}</td>
    <td>
      ${[name, method === null ? '' : METHOD_WORDS[method]].filter((word) => word !== '').join(', ')}
      ${parts.length === 0 ? nothing : html`<small>${parts.join(', ')}</small>`}
    </td>
    <td class="number">${amount}</td>
    <td></td>
  </tr>`;
}
