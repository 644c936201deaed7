import './paper.css';
import { html, render, type TemplateResult } from 'lit-html';
import { type ScreenBook, screenBook } from '../fields/screen-book.ts';
import { getState, type ScreenName } from '../state/store.ts';

/** Screens on paper: set for A4 and Letter alike, made only while printing, in place of the page. */

interface Paper {
  readonly name: string;
  readonly screen: ScreenName;
  readonly make: (book: ScreenBook) => TemplateResult | null;
}

const papers: Paper[] = [];
/** The paper a button asked for; otherwise a screen prints its first one. */
let wanted: string | null = null;

/** Says what a screen looks like on paper. Called once, when the screen's code arrives. */
export function addPaper(paper: Paper): void {
  papers.push(paper);
}

/** Opens the print dialog for one paper. */
export function printPaper(name: string): void {
  wanted = name;
  window.print();
}

addEventListener('beforeprint', () => {
  const state = getState();
  const paper =
    papers.find(({ name, screen }) => name === wanted && screen === state.screen) ??
    papers.find(({ screen }) => screen === state.screen);
  const book = screenBook(state);
  const made = paper === undefined || book === null ? null : paper.make(book);
  if (made === null) return;
  const sheet = document.createElement('div');
  sheet.id = 'paper';
  document.body.append(sheet);
  render(made, sheet);
});

addEventListener('afterprint', () => {
  wanted = null;
  document.querySelector('#paper')?.remove();
});

/** The lines every paper begins with: the job, the day, and what the paper is. */
export function paperHead(book: ScreenBook, title: string, below: unknown = ''): TemplateResult {
  const date = new Intl.DateTimeFormat(undefined, { dateStyle: 'long' }).format(new Date());
  return html`<header class="paper-title">
    <p><b>${book.settings.name}</b><span>${date}</span></p>
    <h1>${title}</h1>
    ${below}
  </header>`;
}
