import { html, nothing, type TemplateResult } from 'lit-html';
import type { LedgerAnswer } from '../../../server/http/contract.ts';
import { barScale } from '../../drawing/bar-scale.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { actions } from '../../state/store.ts';

type Share = LedgerAnswer['parts'][number];

/** What each section and each part costs, the dearest first. */
export function renderCostShares(
  book: ScreenBook,
  { parts, sections }: LedgerAnswer,
): TemplateResult | typeof nothing {
  if (parts.length === 0) return nothing;
  return html`<section class="panel" aria-labelledby="shares-title">
    <header>
      <div>
        <h2 id="shares-title">Cost by section and part</h2>
        <p>The forecast without contingency, shared by what each takes; the parts add up to it.</p>
      </div>
    </header>
    <div class="body">
      ${sections.length < 2 ? nothing : table(book, 'sections', 'Section', sections)}
      <details class="shares-parts" ?open=${sections.length < 2}>
        <summary>${parts.length === 1 ? 'The one part' : `All ${parts.length} parts`}</summary>
        ${table(book, 'parts', 'Part', parts)}
      </details>
    </div>
  </section>`;
}

function table(
  book: ScreenBook,
  list: 'parts' | 'sections',
  head: string,
  shares: readonly Share[],
): TemplateResult {
  const { formats } = book;
  const scale = barScale(Math.max(0, ...shares.map(({ cost }) => cost.value ?? 0)));
  const dearestFirst = shares.toSorted((one, other) => (other.cost.value ?? 0) - (one.cost.value ?? 0));
  return html`<table class="cost-bars shares" aria-label="Cost by ${head.toLowerCase()}">
    <thead>
      <tr>
        <th scope="col">${head}</th>
        <td class="bar-cell"></td>
        <th scope="col" class="number">Cost</th>
        <th scope="col" class="number">per m² finished</th>
      </tr>
    </thead>
    <tbody>
      ${dearestFirst.map((share) => {
        const name = nameOf(book, list, share.id);
        const at = `ledger/${list}/${encodeURIComponent(share.id)}`;
        return html`<tr data-share="${list}/${share.id}">
          <th scope="row">
            ${
              list === 'parts'
                ? html`<button type="button" class="link" @click=${() => actions.goTo({ table: 'parts', id: share.id, field: 'name' })}>${name}</button>`
                : name
            }
          </th>
          <td class="bar-cell">
            <svg aria-hidden="true"><rect width="${scale(share.cost.value ?? 0)}%" height="100%" rx="2" /></svg>
          </td>
          <td class="number">${heldFigure(formats, `${at}/cost`, share.cost, `Cost of ${name}`)}</td>
          <td class="number">${heldFigure(formats, `${at}/perM2`, share.perM2, `Cost per square metre of ${name}`)}</td>
        </tr>`;
      })}
    </tbody>
  </table>`;
}

function nameOf({ project }: ScreenBook, list: 'parts' | 'sections', id: string): string {
  if (list === 'sections') return id === '' ? 'without a section' : id;
  return project.rows.parts.find((part) => part.id === id)?.name || `part no. ${id}`;
}
