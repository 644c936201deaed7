import { html, type TemplateResult } from 'lit-html';
import { SCREEN_NAMES } from '../state/route.ts';
import { type AppState, actions, type ScreenName } from '../state/store.ts';
import { screenRenderer } from './screens.ts';

const words: Record<ScreenName, string> = {
  parts: 'Parts',
  cutting: 'Cutting',
  banding: 'Banding',
  finish: 'Finish',
  buy: 'Buy',
  catalogue: 'Catalogue',
  settings: 'Settings',
};

/** The whole page: bars, navigation, and the screen chosen. */
export function renderShell(state: AppState): TemplateResult {
  const render = screenRenderer(state.screen, () => actions.show(state.screen));
  return html`
    <nav class="toolbar">
      ${SCREEN_NAMES.map((name) => html`<button class="button plain" @click=${() => actions.show(name)}>${words[name]}</button>`)}
    </nav>
    <main id="main">${render === null ? html`<p class="empty">Loading…</p>` : render(state)}</main>
  `;
}
