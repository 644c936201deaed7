import type { OrderLine, Receipt } from '../../project-input.ts';
import type { OrderLineState } from '../buying-plan.ts';

export interface OrderLineCounts extends OrderLineState {
  /** Packs one has or will have: what was ordered, or what came where that was more, less what went back. */
  readonly kept: number;
  /** Packs that are here and have not gone back. */
  readonly here: number;
}

/**
 * How many packs of an order line came, went back, and are still to come?
 *
 * @param line packs ordered
 * @param receipts deliveries and returns of this line, packs
 * @returns whole packs, none below 0; more sent back than ever came counts as all of them
 *
 * Source: definition. Valid range: any. Departures: none.
 * Example: 5 ordered, 3 came, 1 of them went back: 2 are here, 2 still to come, 4 kept.
 */
export function orderLineCounts(line: OrderLine, receipts: readonly Receipt[]): OrderLineCounts {
  const sum = (kind: Receipt['kind']): number =>
    receipts.filter((one) => one.kind === kind).reduce((total, { count }) => total + packs(count), 0);
  const ordered = packs(line.count);
  const received = sum('received');
  const returned = Math.min(sum('returned'), received);
  return {
    id: line.id,
    ordered,
    received,
    returned,
    open: Math.max(0, ordered - received),
    kept: Math.max(ordered, received) - returned,
    here: received - returned,
  };
}

function packs(count: number): number {
  return Number.isFinite(count) ? Math.max(0, Math.floor(count)) : 0;
}
