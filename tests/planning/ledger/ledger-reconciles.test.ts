import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../server/planning/figure.ts';
import type { LedgerHeading } from '../../../server/planning/ledger/ledger-plan.ts';
import {
  COST_CATEGORIES,
  type Order,
  type OrderLine,
  type Payment,
  type Receipt,
} from '../../../server/planning/project-input.ts';
import { aPart } from '../finish/sample-project.ts';
import { accountsOf, anExtra, anOrder, anOrderLine, aPayment, aReceipt, ledgerOf } from './ledger-project.ts';
import { slowLedger } from './slow-ledger.ts';

const LEDGERS = 1000;

const date = fc.constantFrom('', '2027-01-15', '2027-02-01', '2027-02-28', '2027-03-05');
/** Percents with up to two decimals, as tax rates have. */
const percent = fc.integer({ min: 0, max: 10_000 }).map((hundredths) => hundredths / 100);
const price = fc.oneof(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 20_000_000 }));
const category = fc.constantFrom(...COST_CATEGORIES);

const line = fc.record({
  order: fc.nat({ max: 3 }),
  category,
  count: fc.integer({ min: 0, max: 25 }),
  price: fc.option(price, { freq: 8 }),
  charged: fc.option(price, { freq: 2 }),
  tax: fc.option(percent, { freq: 2 }),
  sentBack: fc.array(fc.record({ count: fc.integer({ min: 0, max: 9 }), date }), { maxLength: 2 }),
});
const order = fc.record({
  date,
  delivery: fc.oneof(fc.constant(0), price),
  surcharge: fc.oneof(fc.constant(0), price),
  tax: fc.option(percent, { freq: 2 }),
});
const payment = fc.record({
  /** From 4 on: without an order, or for one that is gone. */
  order: fc.nat({ max: 5 }),
  refund: fc.boolean(),
  category,
  date,
  amount: fc.oneof(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 100_000_000 })),
  share: fc.oneof(
    fc.constant(1),
    fc.integer({ min: 0, max: 1_000_000 }).map((parts) => parts / 1_000_000),
  ),
});

const ledgers = fc.record({
  taxPercent: fc.option(percent, { freq: 5 }),
  orders: fc.array(order, { maxLength: 4 }),
  lines: fc.array(line, { maxLength: 10 }),
  payments: fc.array(payment, { maxLength: 8 }),
  extras: fc.array(fc.tuple(category, fc.integer({ min: 0, max: 9 }), fc.option(price, { freq: 8 })), {
    maxLength: 4,
  }),
  pieces: fc.array(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 4 }),
});
type Given = typeof ledgers extends fc.Arbitrary<infer Value> ? Value : never;

function rowsOf(given: Given) {
  const orders: Order[] = given.orders.map((one, index) =>
    anOrder(String(index), {
      date: one.date,
      deliveryMinor: one.delivery,
      surchargeMinor: one.surcharge,
      taxPercent: one.tax,
    }),
  );
  const placed = given.lines.filter((one) => one.order < orders.length);
  const orderLines: OrderLine[] = placed.map((one, index) =>
    anOrderLine(String(index), String(one.order), one.category, one.count, one.price, {
      invoicedPriceMinor: one.charged,
      taxPercent: one.tax,
    }),
  );
  const receipts: Receipt[] = placed.flatMap((one, index) =>
    one.sentBack.map((back, at) =>
      aReceipt(`${index}-${at}`, String(index), 'returned', back.count, back.date),
    ),
  );
  const payments: Payment[] = given.payments.map((one, index) =>
    aPayment(String(index), one.amount, {
      kind: one.refund ? 'refund' : 'payment',
      orderId: one.order === 4 ? '' : String(one.order),
      category: one.category,
      date: one.date,
      share: one.share,
    }),
  );
  return { taxPercent: given.taxPercent, orders, orderLines, receipts, payments };
}

const known = ({ ordered, paid, toOrder, forecast }: Omit<LedgerHeading, 'id'>) => ({
  ordered: ordered.value ?? 0,
  paid: paid.value ?? 0,
  toOrder: toOrder.value ?? 0,
  forecast: forecast.value ?? 0,
});

const sumOf = (figures: readonly Figure[]): number =>
  figures.reduce((sum, { value }) => sum + (value ?? 0), 0);

describe('a ledger', () => {
  it(`reconciles to the last unit, and with a second ledger, for ${LEDGERS} random ones`, () => {
    fc.assert(
      fc.property(ledgers, (given) => {
        const { taxPercent, ...rows } = rowsOf(given);
        const { ledger, buying } = accountsOf({
          settings: { taxPercent },
          ...rows,
          parts: given.pieces.map((pieces, index) => aPart({ id: String(index), pieces }).row),
          extras: given.extras.map(([heading, quantity, one], index) =>
            anExtra(String(index), heading, quantity, one),
          ),
        });
        const slow = slowLedger({ taxPercent, ...rows });
        const { headings } = ledger;
        const totals = known(ledger.totals);
        const all = (of: (heading: LedgerHeading) => Figure): number => sumOf(headings.map(of));
        const loose = ledger.payments.filter((_, index) => {
          const orderId = rows.payments[index]?.orderId;
          return !rows.orders.some(({ id }) => id === orderId);
        });
        const end = ledger.series.at(-1);
        // Heading by heading and order by order, a second ledger says the same.
        expect(headings.map(({ ordered, paid }) => [ordered.value ?? 0, paid.value ?? 0])).toEqual(
          COST_CATEGORIES.map((id) => [Number(slow.ordered.get(id)), Number(slow.paid.get(id))]),
        );
        expect(ledger.orders.map(({ total }) => total.value ?? 0)).toEqual(
          rows.orders.map(({ id }) => Number(slow.orderTotals.get(id))),
        );
        // Headings, orders, payments, baskets, parts, sections and the course of the spending tell the same money.
        expect({
          ordered: [
            all(({ ordered }) => ordered),
            sumOf(ledger.orders.map(({ total }) => total)) + sumOf(loose.map(({ own }) => own)),
            end?.orderedMinor ?? 0,
          ],
          paid: [all(({ paid }) => paid), sumOf(ledger.payments.map(({ own }) => own)), end?.paidMinor ?? 0],
          toOrder: [all(({ toOrder }) => toOrder), sumOf(buying.baskets.map(({ total }) => total))],
          forecast: [
            all(({ forecast }) => forecast),
            totals.ordered + totals.toOrder,
            sumOf(ledger.parts.map(({ cost }) => cost)),
            sumOf(ledger.sections.map(({ cost }) => cost)),
          ],
        }).toEqual({
          ordered: Array(3).fill(totals.ordered),
          paid: Array(3).fill(totals.paid),
          toOrder: Array(2).fill(totals.toOrder),
          forecast: Array(4).fill(totals.forecast),
        });
      }),
      { numRuns: LEDGERS, seed: 20_270_310 },
    );
  });

  it('has nothing open under any heading of an order that is paid to the last unit, however it was paid', () => {
    fc.assert(
      fc.property(ledgers, fc.array(fc.nat({ max: 1_000_000 }), { maxLength: 5 }), (given, stages) => {
        const { taxPercent, orders, orderLines, receipts } = rowsOf(given);
        const [first] = orders;
        fc.pre(first !== undefined && orderLines.every(({ unitPriceMinor }) => unitPriceMinor !== null));
        const one = {
          settings: { taxPercent },
          orders: [first ?? anOrder('0')],
          orderLines: orderLines.filter(({ orderId }) => orderId === '0'),
          receipts,
        };
        const total = ledgerOf(one).totals.ordered.value ?? 0;
        const payments: Payment[] = [];
        let left = total;
        for (const [index, stage] of stages.entries()) {
          payments.push(aPayment(String(index), stage, { orderId: '0' }));
          left -= stage;
        }
        payments.push(
          aPayment('last', Math.abs(left), { orderId: '0', kind: left < 0 ? 'refund' : 'payment' }),
        );
        expect(ledgerOf({ ...one, payments }).headings.map(({ open }) => open.value ?? 0)).toEqual(
          COST_CATEGORIES.map(() => 0),
        );
      }),
      { numRuns: 150, seed: 20_270_311 },
    );
  });
});
