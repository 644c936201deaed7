import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { figureButton } from '../../panels/figure-button.ts';
import { actions } from '../../state/store.ts';
import type { BuyLine, SupplierLines } from './group-lines.ts';
import { showMessage } from './message-dialog.ts';
import { askToOrder } from './order-dialog.ts';
import { CATEGORY_WORDS } from './words.ts';

/** One supplier's part of the buy list. */
export function renderSupplier(book: ScreenBook, { supplierId, name, lines }: SupplierLines): TemplateResult {
  const id = `supplier-${supplierId ?? 'none'}`;
  const lead = supplierId === null ? null : (book.suppliers.get(supplierId)?.leadTimeDays ?? null);
  return html`<section class="panel supplier" aria-labelledby=${id}>
    <header>
      <h2 id=${id}>${name}</h2>
      <p>
        ${lines.length === 1 ? '1 line' : `${lines.length} lines`}${lead === null ? '' : `, delivers in ${lead === 1 ? '1 day' : `${lead} days`}`}
      </p>
      <button type="button" class="button" @click=${() => askToOrder(book, { supplierId, name, lines })}>Order these…</button>
      <button type="button" class="button" @click=${() => showMessage(book, { supplierId, name, lines }, '')}>Message…</button>
    </header>
    <div class="body flush">
      ${stackTable(
        `To buy: ${name}`,
        [
          ['Item', 'wide'],
          ['Need', 'number'],
          ['On hand', 'number'],
          ['Buy'],
          ['Cost', 'number'],
          ['Left over', 'number'],
        ],
        repeat(
          lines,
          (line) => line.id,
          (line) => renderLine(book, line),
        ),
      )}
    </div>
  </section>`;
}

function renderLine(book: ScreenBook, line: BuyLine): TemplateResult {
  const { formats } = book;
  const at = `buy/lines/${line.id}`;
  const amount = (field: 'need' | 'onHand' | 'leftover', words: string): TemplateResult =>
    figureButton(`${at}/${field}`, formats.amount(line[field], line.unit), `${words}, ${line.name}`);
  return html`<tr role="row" data-line=${line.id}>
    ${stackCell('Item', itemWords(line), 'lead')} ${stackCell('Need', amount('need', 'Need'), 'number')}
    ${stackCell('On hand', line.onHand === 0 ? html`<span class="none">none</span>` : amount('onHand', 'On hand'), 'number')}
    ${stackCell('Buy', packWords(book, line))} ${stackCell('Cost', costWords(book, line), 'number')}
    ${stackCell('Left over', line.leftover === 0 ? html`<span class="none">none</span>` : amount('leftover', 'Left over'), 'number')}
  </tr>`;
}

function itemWords(line: BuyLine): TemplateResult {
  return html`<span class="item"
      >${
        line.productId === null
          ? line.name
          : html`<button
              type="button"
              class="link"
              @click=${() => actions.goTo({ table: 'products', id: line.productId, field: 'packs' })}
            >
              ${line.name}
            </button>`
      }</span
    >
    <span class="small">${CATEGORY_WORDS[line.category].toLowerCase()}</span>
    ${
      line.notes.length === 0
        ? nothing
        : html`<details class="line-notes">
          <summary>${line.notes.length === 1 ? '1 thing to know' : `${line.notes.length} things to know`}</summary>
          <ul>${line.notes.map((note) => html`<li>${note}</li>`)}</ul>
        </details>`
    }`;
}

function packWords({ formats }: ScreenBook, line: BuyLine): TemplateResult {
  // A free line has no packs; its quantity is what is ordered.
  if (line.productId === null) return html`<b>${formats.amount(line.toBuy, line.unit)}</b>`;
  if (line.packs.length === 0)
    return html`<span class="none">${line.toBuy === 0 ? 'nothing, enough on hand' : 'no pack known'}</span>`;
  const list = (packs: BuyLine['packs']): string =>
    packs.map(({ count, label }) => `${formats.count(count)} × ${label}`).join(' + ');
  return html`<span class="packs">
      ${line.packs.map(
        (pack) =>
          html`<span
            ><b>${formats.count(pack.count)} × ${pack.label}</b>${pack.priceMinor === null || pack.count === 1 ? nothing : html` <small>at ${formats.money(pack.priceMinor)}</small>`}</span
          >`,
      )}</span
    >${
      line.fewestPacks.length === 0
        ? nothing
        : html`<span class="small"
          >or fewer packs: ${list(line.fewestPacks)} for
          ${figureButton(`buy/lines/${line.id}/fewestPacksCost`, formats.money(line.fewestPacksCost), `Cost with the fewest packs, ${line.name}`)}</span
        >`
    }`;
}

function costWords({ formats }: ScreenBook, line: BuyLine): TemplateResult {
  const figure = figureButton(
    `buy/lines/${line.id}/cost`,
    line.cost === null ? 'no price' : formats.money(line.cost),
    `Cost, ${line.name}`,
  );
  return line.cost === null ? html`<span class="no-price">${figure}</span>` : figure;
}
