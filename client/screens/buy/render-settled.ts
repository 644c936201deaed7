import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { shortDateText } from '../ledger/day-text.ts';
import { itemWords } from './render-item.ts';
import { type BuyLine, LINE_STATES } from './state-words.ts';

/** Lines of which nothing more is to be ordered: on their way, here, or in stock from the beginning. */
export function renderSettled(book: ScreenBook, lines: readonly BuyLine[]): TemplateResult | typeof nothing {
  if (lines.length === 0) return nothing;
  return html`<section class="panel supplier settled" aria-labelledby="settled-title">
    <header>
      <div>
        <h2 id="settled-title">Nothing more to order</h2>
        <p>Ordered, here, or in stock from the beginning.</p>
      </div>
    </header>
    <div class="body flush">
      ${stackTable(
        'Nothing more to order',
        [
          ['Item', 'wide'],
          ['Need', 'number'],
          ['In stock', 'number'],
          ['Ordered', 'number'],
          ['Received', 'number'],
          ['Needed by'],
          ['State'],
        ],
        repeat(
          lines,
          ({ id }) => id,
          (line) => settledLine(book, line),
        ),
      )}
    </div>
  </section>`;
}

function settledLine(book: ScreenBook, line: BuyLine): TemplateResult {
  const { formats } = book;
  const [words, tone] = LINE_STATES[line.state];
  const amount = (field: 'need' | 'onHand' | 'ordered' | 'received', name: string) =>
    stackCell(
      name,
      line[field].value === 0
        ? html`<span class="none">none</span>`
        : heldFigure(formats, `buying/lines/${line.id}/${field}`, line[field], `${name}, ${line.name}`),
      'number',
    );
  return html`<tr role="row" data-line=${line.id}>
    ${stackCell('Item', itemWords(book, line), 'lead')} ${amount('need', 'Need')} ${amount('onHand', 'In stock')}
    ${amount('ordered', 'Ordered')} ${amount('received', 'Received')}
    ${stackCell('Needed by', line.neededBy === null ? html`<span class="none">not known</span>` : shortDateText(line.neededBy))}
    ${stackCell('State', html`<span class="chip ${tone}" data-state=${line.state}>${words}</span>`)}
  </tr>`;
}
