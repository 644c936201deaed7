import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { LedgerPlan } from '../../../server/planning/ledger/ledger-plan.ts';
import { planQuote } from '../../../server/planning/ledger/plan-quote.ts';
import { plan } from '../../../server/planning/plan.ts';
import { COST_CATEGORIES, type Quote } from '../../../server/planning/project-input.ts';
import { aPart, aProject } from '../finish/sample-project.ts';
import { anExtra, anOrder, anOrderLine, aPayment, aReceipt, ledgerOf, TODAY } from './ledger-project.ts';

/** Everything the forms and documents let through, with a liking for its ends. */
const ends = (most: number) =>
  fc.oneof(fc.constantFrom(0, 1, most - 1, most), fc.integer({ min: 0, max: most }));
const money = ends(1_000_000_000_000);
const packs = ends(1_000_000);
const percent = fc.oneof(fc.constantFrom(0, 100, 1e-9), fc.double({ min: 0, max: 100, noNaN: true }));
const share = fc.oneof(fc.constantFrom(0, 1, 1e-12), fc.double({ min: 0, max: 1, noNaN: true }));
const hours = fc.oneof(
  fc.constantFrom(0, 100_000, 0.1 + 0.2),
  fc.double({ min: 0, max: 100_000, noNaN: true }),
);
const day = fc.constantFrom('', 'soon', '0001-01-01', '9999-12-31', '2027-02-30');
const category = fc.constantFrom(...COST_CATEGORIES);
const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { freq: 3 });

const quote: fc.Arbitrary<Quote> = fc.record({
  id: fc.constant('1'),
  sender: fc.string(),
  title: fc.string(),
  customer: fc.string(),
  date: day,
  validUntil: day,
  materialsMinor: maybe(money),
  hours,
  rateMinorPerHour: maybe(money),
  markupPercent: fc.double({ min: 0, max: 1000, noNaN: true }),
  taxPercent: maybe(percent),
  showLines: fc.boolean(),
  note: fc.string(),
}) as unknown as fc.Arbitrary<Quote>;

it('no ledger and no quote that can be entered throws, and every sum is whole or unknown', () => {
  fc.assert(
    fc.property(
      fc.record({
        settings: fc.record({
          taxPercent: maybe(percent),
          contingencyPercent: percent,
          rateMinorPerHour: maybe(money),
          readyMadeMinor: maybe(money),
        }),
        charges: fc.tuple(money, money, maybe(percent)),
        lines: fc.array(fc.tuple(category, packs, maybe(money), maybe(money), maybe(percent), packs), {
          maxLength: 5,
        }),
        payments: fc.array(
          fc.tuple(money, share, fc.boolean(), fc.constantFrom('', '1', 'gone'), category, day),
          {
            maxLength: 5,
          },
        ),
        budgets: fc.array(fc.tuple(category, money), { maxLength: 3 }),
        workHours: fc.array(hours, { maxLength: 3 }),
        extra: fc.tuple(category, ends(1_000_000), maybe(ends(1_000_000_000))),
        pieces: fc.integer({ min: 1, max: 1000 }),
        quote,
        /** So many times the same, so that sums leave what can be kept exactly. */
        times: fc.oneof(
          { weight: 15, arbitrary: fc.constant(1) },
          { weight: 1, arbitrary: fc.constant(12_000) },
        ),
      }),
      (given) => {
        const one = given.payments.map(([amount, part, refund, orderId, heading, date], index) =>
          aPayment(String(index), amount, {
            share: part,
            kind: refund ? 'refund' : 'payment',
            orderId,
            category: heading,
            date,
          }),
        );
        const input = aProject({
          settings: given.settings,
          parts: [aPart({ id: '1', pieces: given.pieces }).row],
          extras: [anExtra('1', ...given.extra)],
          orders: [
            anOrder('1', {
              deliveryMinor: given.charges[0],
              surchargeMinor: given.charges[1],
              taxPercent: given.charges[2],
            }),
          ],
          orderLines: given.lines.map(([heading, count, price, charged, tax], index) =>
            anOrderLine(String(index), '1', heading, count, price, {
              invoicedPriceMinor: charged,
              taxPercent: tax,
            }),
          ),
          receipts: given.lines.map((line, index) =>
            aReceipt(String(index), String(index), 'returned', line[5]),
          ),
          payments: one
            .slice(0, 1)
            .flatMap((first) => [
              ...one,
              ...Array.from({ length: given.times - 1 }, (_, index) => ({ ...first, id: `more-${index}` })),
            ]),
          budgets: given.budgets.map(([heading, amountMinor], index) => ({
            id: String(index),
            category: heading,
            amountMinor,
          })),
          workHours: given.workHours.map((length, index) => ({
            id: String(index),
            date: '',
            hours: length,
            note: '',
          })),
        });
        const ledger = ledgerOf(input, 61);
        expectWhole(ledger);
        expectWhole(planQuote(given.quote, { input, plan: plan(input), today: TODAY }));
      },
    ),
    { numRuns: 120, seed: 20_270_312 },
  );
});

function expectWhole(value: unknown): void {
  const wrong: unknown[] = [];
  const look = (at: unknown): void => {
    if (typeof at !== 'object' || at === null) return;
    if ('working' in at && 'value' in at && at.value !== null && !Number.isSafeInteger(at.value))
      wrong.push(at);
    for (const [name, inner] of Object.entries(at)) {
      if (name === 'working') continue;
      if (name.endsWith('Minor') && inner !== null && !Number.isSafeInteger(inner)) wrong.push([name, inner]);
      look(inner);
    }
  };
  look(value as LedgerPlan);
  expect(wrong).toEqual([]);
}
