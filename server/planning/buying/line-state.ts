import type { BuyingState } from './buying-plan.ts';

/**
 * How does a line stand?
 *
 * @param toOrder still to be ordered, in the product's unit; null when not known
 * @param kept ordered and not sent back, @param here of it, @param open still to come, all in the product's unit
 * @returns see `BuyingState`; a line of which nothing is known and nothing is ordered is to be ordered
 *
 * Source: definition. Valid range: amounts of 0 or more. Departures: none.
 * Example: nothing more to order, 2 L ordered, 1 L here: part-received.
 */
export function lineState(toOrder: number | null, kept: number, here: number, open: number): BuyingState {
  const isOrdered = kept > 0 || open > 0;
  if (toOrder === null || toOrder > 0) return isOrdered ? 'part-ordered' : 'to-order';
  if (!isOrdered) return 'covered';
  if (open === 0) return 'received';
  return here > 0 ? 'part-received' : 'ordered';
}
