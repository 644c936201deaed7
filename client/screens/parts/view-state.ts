import { actions } from '../../state/store.ts';

const PANEL_KEY = 'plywright.part-panel';

/** What stands beside the part list, as the user last left it in this browser. */
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
};
