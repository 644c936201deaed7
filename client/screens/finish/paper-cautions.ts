import { html, nothing, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, paperHead } from '../../paper/print-paper.ts';
import { CAUTIONS } from './render-cautions.ts';

/** The cautions for the shop's wall, with every liquid of the job to tick once its label and data sheet are at hand. */
addPaper({ name: 'cautions', screen: 'finish', make: paperCautions });

function paperCautions(book: ScreenBook): TemplateResult {
  const liquids = new Map(
    book.project.plan.recipes
      .flatMap(({ coats }) => coats)
      .flatMap(({ shares }) => shares)
      .map(({ id, name }) => [id, name]),
  );
  return html`${paperHead(book, 'Before you open a can')}
    <section class="big-words">
      <ul>
        ${CAUTIONS.map((caution) => html`<li>${caution}</li>`)}
      </ul>
    </section>
    ${liquids.size === 0 ? nothing : liquidsPart(liquids)}`;
}

function liquidsPart(liquids: ReadonlyMap<string, string>): TemplateResult {
  const box = html`<span class="tick-box"></span>`;
  return html`<section>
    <h2>Liquids of this job</h2>
    <table>
      <thead>
        <tr><th>Product</th><th>Label read</th><th>Data sheet at hand</th><th>Batch</th><th>Opened on</th></tr>
      </thead>
      <tbody>
        ${[...liquids.values()].map(
          (name) =>
            html`<tr class="roomy"><td>${name}</td><td>${box}</td><td>${box}</td><td></td><td></td></tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}
