import { html, nothing, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { actions } from '../../state/store.ts';
import type { BuyLine } from './state-words.ts';
import { CATEGORY_WORDS } from './words.ts';

/** A line's name, what is bought in its place, and what there is to know of it. */
export function itemWords({ products }: ScreenBook, line: BuyLine): TemplateResult {
  const { productId, substituteId } = line;
  return html`<span class="item"
      >${
        productId === null
          ? line.name
          : html`<button
              type="button"
              class="link"
              @click=${() => actions.goTo({ table: 'products', id: productId, field: 'packs' })}
            >
              ${line.name}
            </button>`
      }</span
    >
    <span class="small">${CATEGORY_WORDS[line.category].toLowerCase()}</span>
    ${
      substituteId === null
        ? nothing
        : html`<span class="small"><b>Bought instead: ${products.get(substituteId)?.name ?? substituteId}</b></span>`
    }
    ${fold(line.notes.length === 1 ? '1 thing to know' : `${line.notes.length} things to know`, line.notes)}
    ${fold('Why this day', line.orderBy === null ? [] : line.orderByWorking)}`;
}

function fold(title: string, sentences: readonly string[]): TemplateResult | typeof nothing {
  return sentences.length === 0
    ? nothing
    : html`<details class="line-notes">
        <summary>${title}</summary>
        <ul>${sentences.map((sentence) => html`<li>${sentence}</li>`)}</ul>
      </details>`;
}
