import { type AppState, actions } from '../../state/store.ts';

/** Steps whose finer points are open, as this window has them. */
const open = new Set<string>();

export function detailsOpen(stepId: string): boolean {
  return open.has(stepId);
}

export function toggleDetails(stepId: string): void {
  if (!open.delete(stepId)) open.add(stepId);
  actions.redraw();
}

/** The fields of a step that stand among its finer points. */
export const INSIDE = ['thinning', 'thinnerId', 'transferEfficiency', 'sessionLossL', 'note'];

/** Opens the finer points of a step when the user asked to be taken into them. */
export function openForFocus({ focus }: AppState): void {
  if (focus?.table === 'steps' && focus.id !== null && INSIDE.includes(focus.field ?? '')) open.add(focus.id);
}
