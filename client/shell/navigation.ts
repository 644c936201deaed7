import { html, type TemplateResult } from 'lit-html';
import { SCREEN_NAMES, writeRoute } from '../state/route.ts';
import { type AppState, actions, type ScreenName } from '../state/store.ts';
import { icon } from './icons.ts';

export const SCREEN_WORDS: Record<ScreenName, string> = {
  parts: 'Parts',
  cutting: 'Cutting',
  banding: 'Banding',
  finish: 'Finish',
  calendar: 'Calendar',
  air: 'Air',
  buy: 'Buy',
  ledger: 'Ledger',
  quotes: 'Quotes',
  catalogue: 'Catalogue',
  settings: 'Settings',
};

/** What a phone's bar has room for; the others wait behind its last button. */
const ON_A_PHONE: readonly ScreenName[] = ['parts', 'cutting', 'banding', 'finish', 'buy'];

/** The screens, as links so that they can be opened beside one another. */
export function renderNavigation(state: AppState): TemplateResult {
  const later = SCREEN_NAMES.filter((name) => !ON_A_PHONE.includes(name));
  const behind = later.find((name) => name === state.screen);
  return html`
    <nav class="navigation" aria-label="Screens" data-region>
      ${SCREEN_NAMES.map((name) => renderLink(state, name, later.includes(name) ? 'wide-only' : ''))}
      <button class="more-screens" popovertarget="more-screens" aria-current=${behind === undefined ? 'false' : 'page'}>
        ${icon('more')}<span>${behind === undefined ? 'More' : SCREEN_WORDS[behind]}</span>
      </button>
    </nav>
    <nav id="more-screens" class="menu" popover aria-label="More screens">
      ${later.map((name) => renderLink(state, name, 'menu-item'))}
    </nav>
  `;
}

function renderLink(state: AppState, name: ScreenName, className: string): TemplateResult {
  const href = state.project === null ? '#' : writeRoute({ projectId: state.project.id, screen: name });
  return html`<a class=${className} href=${href} aria-current=${state.screen === name ? 'page' : 'false'} @click=${(event: MouseEvent) => go(event, name)}
    >${icon(name)}<span>${SCREEN_WORDS[name]}</span></a
  >`;
}

function go(event: MouseEvent, name: ScreenName): void {
  if (event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  document.querySelector<HTMLElement>('#more-screens:popover-open')?.hidePopover();
  actions.show(name);
}
