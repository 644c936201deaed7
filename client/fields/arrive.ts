import { type AppState, actions } from '../state/store.ts';
import { placeKey } from './place.ts';

/**
 * Puts the keyboard where the user asked to be taken. Called while a screen is drawn; acts once the drawing is in
 * the page. A place whose field is not on the page (a whole row, a list) is answered by the row that holds it, and
 * one that is not there at all by the screen's title, so that the request is over either way.
 */
export function arrive(state: AppState): void {
  const { focus } = state;
  if (focus === null) return;
  requestAnimationFrame(() => {
    const target =
      find(`[data-at="${CSS.escape(placeKey(focus))}"]`) ??
      (focus.id === null
        ? null
        : find(`[data-row="${CSS.escape(`${focus.table}/${focus.id}`)}"] :is(input, select, button)`)) ??
      find(`[data-list="${focus.table}"]`) ??
      find('.screen h1');
    target?.scrollIntoView({ block: 'center' });
    target?.focus();
    actions.arrived();
  });
}

function find(selector: string): HTMLElement | null {
  return document.querySelector<HTMLElement>(selector);
}
