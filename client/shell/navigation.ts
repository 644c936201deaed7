import { html, type TemplateResult } from 'lit-html';
import { SCREEN_NAMES, writeRoute } from '../state/route.ts';
import { type AppState, actions, type ScreenName } from '../state/store.ts';
import { icon } from './icons.ts';

export const SCREEN_WORDS: Record<ScreenName, string> = {
  parts: 'Parts',
  cutting: 'Cutting',
  banding: 'Banding',
  finish: 'Finish',
  buy: 'Buy',
  catalogue: 'Catalogue',
  settings: 'Settings',
};

/** The screens, as links so that they can be opened beside one another. */
export function renderNavigation(state: AppState): TemplateResult {
  return html`
    <nav class="navigation" aria-label="Screens" data-region>
      ${SCREEN_NAMES.map((name) => {
        const href = state.project === null ? '#' : writeRoute({ projectId: state.project.id, screen: name });
        return html`<a href=${href} aria-current=${state.screen === name ? 'page' : 'false'} @click=${(event: MouseEvent) => go(event, name)}
          >${icon(name)}<span>${SCREEN_WORDS[name]}</span></a
        >`;
      })}
    </nav>
  `;
}

function go(event: MouseEvent, name: ScreenName): void {
  if (event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  actions.show(name);
}
