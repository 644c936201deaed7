import { html, type TemplateResult } from 'lit-html';
import type { AppState, ScreenName } from '../state/store.ts';

/**
 * Where each screen's code is. A screen is fetched when it is first shown, so that the part list is on the table
 * before the other screens' code has to be.
 */

type RenderScreen = (state: AppState) => TemplateResult;

const modules = import.meta.glob<Record<string, RenderScreen>>('../screens/*/render-*-screen.ts');
const loaded = new Map<ScreenName, RenderScreen>();

/** The screen's drawing function, or null while it is being fetched; `onLoaded` is then called once it is there. */
export function screenRenderer(name: ScreenName, onLoaded: () => void): RenderScreen | null {
  const ready = loaded.get(name);
  if (ready !== undefined) return ready;
  const load = modules[`../screens/${name}/render-${name}-screen.ts`];
  if (load === undefined) return () => html`<p class="empty">This screen is not built yet.</p>`;
  void load().then((module) => {
    const render = module[`render${name[0]?.toUpperCase()}${name.slice(1)}Screen`];
    if (render === undefined) throw new Error(`render-${name}-screen.ts does not export its screen`);
    loaded.set(name, render);
    onLoaded();
  });
  return null;
}
