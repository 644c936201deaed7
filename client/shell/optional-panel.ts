import { nothing, type TemplateResult } from 'lit-html';
import { type AppState, actions } from '../state/store.ts';

type RenderPanel = (state: AppState) => TemplateResult;

const modules = import.meta.glob<Record<string, RenderPanel>>('../panels/{part,working}-panel.ts');
const loaded = new Map<string, RenderPanel | 'loading'>();

/** A panel drawn by its own module, fetched when it is first wanted. */
export function optionalPanel(
  name: 'part-panel' | 'working-panel',
  state: AppState,
): TemplateResult | typeof nothing {
  const render = loaded.get(name);
  if (typeof render === 'function') return render(state);
  const load = modules[`../panels/${name}.ts`];
  if (render === undefined && load !== undefined) {
    loaded.set(name, 'loading');
    void load().then((module) => {
      const exported = module[name === 'part-panel' ? 'renderPartPanel' : 'renderWorkingPanel'];
      if (exported === undefined) throw new Error(`${name}.ts does not export its panel`);
      loaded.set(name, exported);
      actions.redraw();
    });
  }
  return nothing;
}
