import { html, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, printPaper } from '../../paper/print-paper.ts';
import { wantQuote } from '../../state/quote-answers.ts';
import { customerSheet } from './customer-sheet.ts';

/** The sheet for the customer. The screen itself is never printed: it shows what the customer must not see. */
addPaper({ name: 'quote', screen: 'quotes', make: paperQuote });

/** The quote a button asked for; else the one the keyboard is in, else the first. */
let wanted: string | null = null;

export function printQuote(id: string): void {
  wanted = id;
  addEventListener(
    'afterprint',
    () => {
      wanted = null;
    },
    { once: true },
  );
  printPaper('quote');
}

function paperQuote({ project, formats }: ScreenBook): TemplateResult {
  const { quotes } = project.rows;
  const around = document.activeElement?.closest('[data-row^="quotes/"]')?.getAttribute('data-row');
  const id = wanted ?? around?.slice('quotes/'.length) ?? quotes[0]?.id;
  const answer = id === undefined ? null : wantQuote(id);
  if (answer === null)
    return html`<p>${quotes.length === 0 ? 'There is no quote yet.' : 'The quote is not worked out yet; print again in a moment.'}</p>`;
  return customerSheet(answer.sheet, formats);
}
