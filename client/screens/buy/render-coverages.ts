import { html, nothing, type TemplateResult } from 'lit-html';
import type { BuyingAnswer } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { askToTakeOver } from './coverage-dialog.ts';

export type Coverage = BuyingAnswer['coverages'][number];

/** Coverage the user got, beside the catalogue's. Nothing reckons with it until it is taken over. */
export function renderCoverages(
  book: ScreenBook,
  { coverages }: BuyingAnswer,
): TemplateResult | typeof nothing {
  if (coverages.length === 0) return nothing;
  return html`<section class="panel no-print" aria-labelledby="coverage-title">
    <header>
      <div>
        <h2 id="coverage-title">My coverage</h2>
        <p>
          From the litres you noted for finished coats. The plan goes on reckoning with the catalogue’s figures until you take
          yours over.
        </p>
      </div>
    </header>
    <div class="body flush">
      ${stackTable(
        'Coverage you got',
        [
          ['Product', 'wide'],
          ['You got', 'number'],
          ['Low', 'number'],
          ['Typical', 'number'],
          ['High', 'number'],
          ['Acts', 'acts'],
        ],
        coverages.map((coverage) => coverageRow(book, coverage)),
        { extraClass: 'coverage-table' },
      )}
    </div>
  </section>`;
}

function coverageRow(book: ScreenBook, coverage: Coverage): TemplateResult {
  const { formats } = book;
  const { id, name, got, coats, litres, areaM2 } = coverage;
  const catalogue = (field: 'catalogueLow' | 'catalogueTypical' | 'catalogueHigh', head: string) =>
    stackCell(
      head,
      coverage[field] === null
        ? html`<span class="none">not known</span>`
        : formats.figure(coverage[field], got.unit),
      'number',
    );
  return html`<tr role="row" data-coverage=${id}>
    ${stackCell(
      'Product',
      html`<span class="item">${name}</span
        ><span class="small"
          >${coats === 1 ? '1 coat' : `${coats} coats`}, ${formats.volume(litres)} over ${formats.area(areaM2)}</span
        >`,
      'lead',
    )}
    ${stackCell('You got', heldFigure(formats, `buying/coverages/${id}/got`, got, `Coverage you got, ${name}`), 'number')}
    ${catalogue('catalogueLow', 'Low')} ${catalogue('catalogueTypical', 'Typical')} ${catalogue('catalogueHigh', 'High')}
    ${stackCell(
      '',
      got.value === null
        ? nothing
        : html`<button type="button" class="link act-link" aria-label="Use my coverage of ${name}" @click=${() => askToTakeOver(book, coverage)}>Use mine…</button>`,
      'acts',
    )}
  </tr>`;
}
