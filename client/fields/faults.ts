import { actions } from '../state/store.ts';
import { type Place, placeKey } from './place.ts';

/** Why a typed value was not taken. It stays beside its field until the value is taken or given up. */
export interface Refusal {
  readonly message: string;
  readonly wayOut: string;
}

const refusals = new Map<string, Refusal>();

export function refusalAt(place: Place): Refusal | null {
  return refusals.get(placeKey(place)) ?? null;
}

export function setRefusal(place: Place, refusal: Refusal | null): void {
  const key = placeKey(place);
  if (refusal === null) refusals.delete(key);
  else refusals.set(key, refusal);
  actions.redraw();
}
