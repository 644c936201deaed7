import type { Change } from '../../../../server/http/contract.ts';

/**
 * The moves that bring the list into the wanted order; both name the same rows. The rows that already stand in the
 * wanted order from the top stay, and the others go to the end one after the other, so that no move has to make room.
 */
export function keepOrder(stored: readonly string[], wanted: readonly string[]): Change[] {
  const place = new Map(stored.map((id, index) => [id, index]));
  let staying = 0;
  let last = -1;
  for (const id of wanted) {
    const at = place.get(id);
    if (at === undefined || at < last) break;
    last = at;
    staying += 1;
  }
  return wanted.slice(staying).map((id): Change => ({ op: 'move', table: 'parts', id, before: null }));
}
