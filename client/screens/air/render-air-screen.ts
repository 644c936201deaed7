import '../../fields/fields.css';
import './air.css';
import './paper-air.ts';
import { html, nothing, type TemplateResult } from 'lit-html';
import { arrive } from '../../fields/arrive.ts';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { printPaper } from '../../paper/print-paper.ts';
import { type AppState, actions } from '../../state/store.ts';
import { type AirBook, airBook } from './air-book.ts';
import { renderAirCautions } from './render-air-cautions.ts';
import { renderCoats } from './render-coats.ts';
import { renderCurves } from './render-curves.ts';
import { renderIndoors } from './render-indoors.ts';
import { renderNumbers } from './render-numbers.ts';
import { renderRoom } from './render-room.ts';
import { renderVapours } from './render-vapours.ts';
import { renderVerdict } from './render-verdict.ts';

/** What the coats do to the air of the shop, how much fresh air they take, and when the piece may come indoors. */
export function renderAirScreen(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  actions.wantAnswer('air');
  arrive(state);
  // Before the first calendar nothing is known, and saying so at length would only worry.
  const waits = state.air?.state === 'working' && state.air.air.coats.length === 0;
  const air = state.air === null || waits ? null : airBook(book, state.air);
  return html`<section
    class="page air-screen"
    aria-labelledby="air-title"
    data-current=${state.air?.revision === book.project.revision && state.air.state === 'ready' ? 'yes' : 'no'}
  >
    <div class="page-head">
      <div>
        <h1 id="air-title" tabindex="-1">Air</h1>
        <p>Every coat of the calendar gives off vapour. Here is how much of it stands in the room, against fire and for your lungs, and how much fresh air it takes.</p>
      </div>
      <div class="page-acts">
        <button type="button" class="button" ?disabled=${air === null} @click=${() => printPaper('air')}>${screenIcon('print')} Print</button>
      </div>
    </div>
    ${renderState(state, book)}
    <div class="air-top">
      <div class="air-answer">
        ${air === null ? nothing : renderVerdict(book, air)}
        ${air === null || air.plan.verdict === 'no-coats' ? nothing : renderNumbers(book, air)}
      </div>
      ${renderAirCautions(air)}
    </div>
    ${air === null || air.plan.days.length === 0 ? nothing : renderCurves(air)}
    ${renderRoom(book)}
    ${air === null || air.plan.verdict === 'no-coats' ? nothing : html`${renderIndoors(book, air)} ${renderVapours(book, air)} ${renderCoats(book, air)} ${renderNotes(air)}`}
  </section>`;
}

function renderState(state: AppState, { project }: ScreenBook): TemplateResult | typeof nothing {
  const { air } = state;
  if (air?.state === 'failed')
    return html`<p class="air-state warning" role="status">The calendar could not be worked out, so this may be out of date. It is tried again after the next change.</p>`;
  if (air !== null && air.state === 'ready' && !air.stale && air.revision >= project.revision) return nothing;
  return html`<p class="air-state" role="status"><span class="air-busy" aria-hidden="true"></span>
    ${air === null ? 'Working it out.' : air.stale ? 'The calendar is being planned anew; what is shown is the one before the last change.' : 'The calendar is being planned; the air follows from it.'}</p>`;
}

/** What stands behind the figures. */
function renderNotes({ plan }: AirBook): TemplateResult {
  return html`<section class="panel" aria-labelledby="air-notes">
    <header><div><h2 id="air-notes">What is assumed</h2><p>The model is a simple one: one room, one air, coats that fade. Its figures are no better than what stands here.</p></div></header>
    <div class="body"><ul class="air-notes">${plan.notes.map((note) => html`<li>${note}</li>`)}</ul></div>
  </section>`;
}
