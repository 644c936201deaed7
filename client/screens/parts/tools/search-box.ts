import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { icon } from '../../../shell/icons.ts';
import type { ListShown } from '../view/list-shown.ts';
import { withSearch } from '../view/list-view.ts';

const BOX = '#parts-search';

/** The box that narrows the list to what is typed in it. Escape empties it; Enter and Down go to the list. */
export function renderSearchBox(list: ListShown, toList: () => void): TemplateResult {
  const { search } = list.view();
  const { all, matching } = list.counts();

  function onKey(event: KeyboardEvent): void {
    if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      if (search === '') toList();
      else list.change((view) => withSearch(view, ''));
    } else if (event.key === 'Enter' || event.key === 'ArrowDown') {
      event.preventDefault();
      toList();
    }
  }
  function empty(): void {
    list.change((view) => withSearch(view, ''));
    document.querySelector<HTMLInputElement>(BOX)?.focus();
  }
  return html`<div class="search-box ${search === '' ? '' : 'has-text'}" role="search">
    ${icon('search')}
    <input
      id="parts-search"
      type="text"
      role="searchbox"
      aria-label="Find in the part list"
      aria-keyshortcuts="Control+F"
      placeholder="Find in the list"
      title="Find in the list (Ctrl+F)"
      autocomplete="off"
      spellcheck="false"
      .value=${live(search)}
      @input=${(event: InputEvent) => list.change((view) => withSearch(view, (event.target as HTMLInputElement).value))}
      @keydown=${onKey}
    />
    <span class="search-count" role="status">${search.trim() !== '' ? html`${matching} of ${all}<span class="visually-hidden"> parts shown</span>` : nothing}</span>
      ${
        search === ''
          ? nothing
          : html`<button class="chip-close" aria-label="Stop searching" title="Stop searching (Esc)" @click=${empty}>
          ${icon('close')}
        </button>`
      }
  </div>`;
}

/** Ctrl+F goes to the box while the part list is shown. In the box, it is the browser's own search again. */
export function listenForFind(): void {
  window.addEventListener('keydown', (event) => {
    const box = document.querySelector<HTMLInputElement>(BOX);
    const find = (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey;
    if (box === null || !find || event.key.toLowerCase() !== 'f') return;
    if (document.activeElement === box || document.querySelector('dialog[open]') !== null) return;
    event.preventDefault();
    box.focus();
    box.select();
  });
}
