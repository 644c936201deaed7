import { type AppState, actions } from '../../state/store.ts';
import { CORNER_FIELDS } from './part-columns.ts';

const PANEL_KEY = 'plywright.part-panel';

let corners: boolean | null = null;

/** What of the part list is shown, as the user last left it in this browser. */
export const viewState = {
  /** Until said otherwise, the drawing stands open where there is room beside the list. */
  panelOpen: (): boolean => {
    const said = localStorage.getItem(PANEL_KEY);
    return said === null ? !window.matchMedia('(width < 64rem)').matches : said === 'open';
  },
  setPanel(open: boolean): void {
    localStorage.setItem(PANEL_KEY, open ? 'open' : 'closed');
    actions.redraw();
  },
  /** Until said otherwise, the corner columns stand open when a part has a rounded corner. */
  cornersShown: (state: AppState): boolean =>
    corners ??
    state.project?.rows.parts.some((part) => CORNER_FIELDS.some((field) => part[field] !== '')) ??
    false,
  setCorners(visible: boolean): void {
    corners = visible;
    actions.redraw();
  },
};
