import './search.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { keyed } from 'lit-html/directives/keyed.js';
import { ref } from 'lit-html/directives/ref.js';
import type { MaterialSearch } from '../../../server/http/contract.ts';
import type { Formats } from '../../format/formats.ts';
import { actions } from '../../state/store.ts';

/** A quiet line on the search for a better plan of one material: how it stands, and what can be asked of it. */
export function renderSearch(formats: Formats, search: MaterialSearch): TemplateResult | typeof nothing {
  const words = wordsOf(formats, search);
  if (words === null) return nothing;
  const goesOn = search.state === 'running' || search.state === 'waiting';
  return html`<div class="cutting-search" data-state=${search.state}>
    ${search.state === 'running' ? renderTime(search) : nothing}
    <p>${words}</p>
    ${
      goesOn
        ? html`<button type="button" class="button plain" @click=${() => void actions.stopCutting()}>Stop</button>`
        : nothing
    }
    ${
      search.state === 'failed'
        ? html`<button
            type="button"
            class="button"
            @click=${() => void actions.searchCutting(search.id)}
          >
            Try again
          </button>`
        : nothing
    }
    ${
      search.state === 'idle' && !search.complete
        ? html`<button
            type="button"
            class="button plain"
            @click=${() => void actions.searchCutting(search.id)}
          >
            ${search.searchedMs > 0 ? 'Search longer' : 'Search for better'}
          </button>`
        : nothing
    }
  </div>`;
}

function wordsOf(formats: Formats, search: MaterialSearch): string | null {
  const { state, searchedMs, complete } = search;
  switch (state) {
    // The heading says so already.
    case 'proven':
      return null;
    case 'running':
      return `Searching for a cheaper plan. ${standing(formats, search)}`;
    case 'waiting':
      return 'Waits for its turn to be searched for a cheaper plan.';
    case 'kept':
      return 'Pieces are ticked as cut, so the sheets begun stay as they are.';
    case 'failed':
      return 'The search for a better plan has broken down. The plan shown can be cut as it is.';
    case 'idle':
      if (complete) return `Searched to the end; nothing cheaper was found. ${standing(formats, search)}`;
      if (searchedMs === 0) return 'A longer search may find a cheaper plan.';
      return `Searched for ${seconds(searchedMs)}. ${standing(formats, search)}`;
  }
}

/** The best so far and what no plan can beat, in money where that is known. */
function standing(
  formats: Formats,
  { costMinor, boundCostMinor, stocks, boundStocks }: MaterialSearch,
): string {
  if (costMinor !== null && boundCostMinor !== null)
    return `Best so far ${formats.money(costMinor)}; no plan costs less than ${formats.money(Math.ceil(boundCostMinor))}.`;
  return `Best so far ${formats.count(stocks)}; no plan needs fewer than ${formats.count(boundStocks)}.`;
}

function seconds(ms: number): string {
  return ms < 90_000 ? `${Math.max(1, Math.round(ms / 1000))} s` : `${Math.round(ms / 60_000)} min`;
}

/** A line that fills up while the time runs; the browser moves it by itself. */
function renderTime({ since, budgetMs }: MaterialSearch): TemplateResult {
  return html`${keyed(
    since,
    html`<span
      class="search-time"
      aria-hidden="true"
      data-since=${since}
      style="animation-duration: ${budgetMs}ms"
      ${ref(startTime)}
    ></span>`,
  )}`;
}

/** Lets a line that is drawn late begin where it would be by now; once only, or it would run faster with each redraw. */
function startTime(line: Element | undefined): void {
  if (!(line instanceof HTMLElement) || line.style.animationDelay !== '') return;
  line.style.animationDelay = `${Math.min(0, Date.parse(line.dataset.since ?? '') - Date.now())}ms`;
}
