import { actions } from '../../state/store.ts';

const query = matchMedia('(width < 48rem)');
query.addEventListener('change', () => actions.redraw());

/** Whether the screen is a phone's: sheets are then drawn upright. */
export function narrow(): boolean {
  return query.matches;
}
