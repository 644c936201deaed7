import { isDate } from '../calendar/is-date.ts';
import type { Payment, ProjectInput, Receipt } from '../project-input.ts';
import { groupRows } from './group-rows.ts';
import { ownShare } from './own-share.ts';
import { type OrderReckoning, reckonOrder } from './reckon-order.ts';

export interface ReckonedPayment {
  readonly payment: Payment;
  /** What this project bears; below 0 for a refund. */
  readonly ownMinor: number;
  /** The order it is for; null for something bought without one. */
  readonly orderId: string | null;
}

/** Everything ordered and paid, in whole minor units. */
export interface LedgerEntries {
  readonly orders: readonly OrderReckoning[];
  readonly payments: readonly ReckonedPayment[];
  /** Payments without an order: what they paid for counts as ordered on the same day. */
  readonly loose: readonly ReckonedPayment[];
  readonly receipts: ReadonlyMap<string, readonly Receipt[]>;
}

/**
 * What has been ordered and paid, order by order and payment by payment?
 *
 * @param taxPercent the project's rate; null where none is set
 * @returns the orders and payments in the project's order. A payment for an order that is gone counts as bought without one.
 *
 * Source: `reckonOrder`, `ownShare`; nothing is computed here but sums.
 */
export function ledgerEntries(
  input: Pick<ProjectInput, 'orders' | 'orderLines' | 'receipts' | 'payments'>,
  taxPercent: number | null,
): LedgerEntries {
  const orders = input.orders.map(dated);
  const known = new Set(orders.map(({ id }) => id));
  const receipts = groupRows(input.receipts.map(dated), ({ orderLineId }) => orderLineId);
  const lines = groupRows(input.orderLines, ({ orderId }) => orderId);
  const payments = input.payments.map(dated).map((payment) => ({
    payment,
    ownMinor: ownShare(payment),
    orderId: known.has(payment.orderId) ? payment.orderId : null,
  }));
  const paidFor = new Map<string, number>();
  for (const { orderId, ownMinor } of payments)
    if (orderId !== null) paidFor.set(orderId, (paidFor.get(orderId) ?? 0) + ownMinor);
  return {
    orders: orders.map((order) =>
      reckonOrder({
        order,
        lines: lines.get(order.id) ?? [],
        receipts,
        paidMinor: paidFor.get(order.id) ?? 0,
        taxPercent,
      }),
    ),
    payments,
    loose: payments.filter(({ orderId }) => orderId === null),
    receipts,
  };
}

/** A date that is none counts as not given; the problems say so. */
function dated<Row extends { readonly date: string }>(row: Row): Row {
  return isDate(row.date) ? row : { ...row, date: '' };
}

/** What was bought without an order, named for a working. */
export function looseName({ payment }: ReckonedPayment): string {
  const what = payment.kind === 'refund' ? 'refund' : 'bought without an order';
  return [what, payment.date, payment.receiptNumber || payment.note].filter((word) => word !== '').join(', ');
}

/** The order, named for a working. */
export function orderName({ order }: OrderReckoning): string {
  return ['order', order.number, order.date].filter((word) => word !== '').join(' ');
}
