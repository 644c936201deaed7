import type { ProjectInput } from '../../project-input.ts';
import type { OrderState } from '../buying-plan.ts';
import { expectedOn } from '../dates/expected-on.ts';
import type { OrderLineCounts } from './order-line-counts.ts';

/**
 * How does each order stand on one day?
 *
 * @param counts of each order line, by its id
 * @param today YYYY-MM-DD
 * @returns orders in their order: what came of each line, when the rest should be here, and whether it is overdue
 *
 * Source: definition. Valid range: any. Departures: none.
 * Example: expected yesterday and not all here: overdue.
 */
export function orderStates(
  { orders, orderLines, daysOff, catalogue }: ProjectInput,
  counts: ReadonlyMap<string, OrderLineCounts>,
  today: string,
): readonly OrderState[] {
  const off = new Set(daysOff.map(({ date }) => date.trim()));
  return orders.map((order): OrderState => {
    const supplier = catalogue.suppliers.find(({ id }) => id === order.supplierId) ?? null;
    const lines = orderLines.flatMap(({ id, orderId }) => {
      const counted = counts.get(id);
      return orderId !== order.id || counted === undefined ? [] : [counted];
    });
    const state = stateOf(lines);
    const expected = expectedOn(order.date, supplier, off);
    return {
      id: order.id,
      supplierId: order.supplierId,
      supplierName: supplier?.name ?? order.supplierId,
      date: order.date,
      state,
      expectedOn: expected,
      overdue: expected !== null && expected < today && (state === 'ordered' || state === 'part-received'),
      lines: lines.map(({ id, ordered, received, returned, open }) => ({
        id,
        ordered,
        received,
        returned,
        open,
      })),
    };
  });
}

function stateOf(lines: readonly OrderLineCounts[]): OrderState['state'] {
  if (lines.every(({ ordered, received }) => ordered === 0 && received === 0)) return 'empty';
  if (lines.every(({ open }) => open === 0)) return 'received';
  return lines.some(({ received }) => received > 0) ? 'part-received' : 'ordered';
}
