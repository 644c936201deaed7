import { html, type TemplateResult } from 'lit-html';
import type { AppState, ScreenName } from '../state/store.ts';

/**
 * Where each screen's code is. A screen is fetched when it is first shown, so that the part list is on the table
 * before the other screens' code has to be.
 */

type RenderScreen = (state: AppState) => TemplateResult;

const LOADERS: Readonly<Record<ScreenName, () => Promise<RenderScreen>>> = {
  parts: async () => (await import('../screens/parts/render-parts-screen.ts')).renderPartsScreen,
  cutting: async () => (await import('../screens/cutting/render-cutting-screen.ts')).renderCuttingScreen,
  banding: async () => (await import('../screens/banding/render-banding-screen.ts')).renderBandingScreen,
  finish: async () => (await import('../screens/finish/render-finish-screen.ts')).renderFinishScreen,
  calendar: async () => (await import('../screens/calendar/render-calendar-screen.ts')).renderCalendarScreen,
  air: async () => (await import('../screens/air/render-air-screen.ts')).renderAirScreen,
  buy: async () => (await import('../screens/buy/render-buy-screen.ts')).renderBuyScreen,
  ledger: async () => (await import('../screens/ledger/render-ledger-screen.ts')).renderLedgerScreen,
  quotes: async () => (await import('../screens/quotes/render-quotes-screen.ts')).renderQuotesScreen,
  catalogue: async () =>
    (await import('../screens/catalogue/render-catalogue-screen.ts')).renderCatalogueScreen,
  settings: async () => (await import('../screens/settings/render-settings-screen.ts')).renderSettingsScreen,
};

const known = new Map<ScreenName, RenderScreen | 'loading'>();

/** The screen's drawing function, or null while it is being fetched; `onReady` is called once there is one. */
export function screenRenderer(name: ScreenName, onReady: () => void): RenderScreen | null {
  const render = known.get(name);
  if (typeof render === 'function') return render;
  if (render === undefined) {
    known.set(name, 'loading');
    void LOADERS[name]()
      .catch(() => renderMissing)
      .then((ready) => {
        known.set(name, ready);
        onReady();
      });
  }
  return null;
}

/** In place of a screen whose code could not be fetched. */
function renderMissing(): TemplateResult {
  return html`<div class="empty" role="alert">
    <h2>This screen could not be fetched</h2>
    <p>Check that the Plywright server is running, then reload the page. Nothing you have entered is lost.</p>
    <button class="button primary" @click=${() => location.reload()}>Reload</button>
  </div>`;
}
