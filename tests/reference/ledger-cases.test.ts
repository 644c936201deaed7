import { describe, expect, it } from 'vitest';
import {
  anExtra,
  anOrder,
  anOrderLine,
  aPayment,
  headingOf,
  ledgerOf,
} from '../planning/ledger/ledger-project.ts';

/** Costs of real pieces as their makers told them; whole cents. */

describe('three birch sheets at about $49, ourhomefromscratch.com, Planning and cutting the plywood, March 2013', () => {
  it('are $147, and with an assumed 8 % tax $158.76', () => {
    // Tax by the line: 8 % of 147.00 is 11.76.
    const ledger = ledgerOf({
      settings: { taxPercent: 8 },
      orders: [anOrder('1')],
      orderLines: [anOrderLine('1', '1', 'sheets', 3, 4900)],
    });
    expect([ledger.orders[0]?.goods.value, ledger.orders[0]?.total.value]).toEqual([14700, 15876]);
  });
});

describe('build or buy the media bookcase, the144workshop.com, part three', () => {
  // Ready made $70 and two shelves at $10, $96 with tax. Built: ply and back $90 to 120, edging $15 to 30, van $20.
  const build = (ply: number, edging: number) =>
    ledgerOf({
      settings: { readyMadeMinor: 9600 },
      extras: [
        anExtra('1', 'sheets', 1, ply),
        anExtra('2', 'banding', 1, edging),
        anExtra('3', 'other', 1, 2000),
      ],
    });

  it('costs $125 to $170 before paint, 1.3 to 1.8 times the price in the shop', () => {
    const [least, most] = [build(9000, 1500), build(12000, 3000)];
    expect([least.forecast.value, most.forecast.value]).toEqual([12500, 17000]);
    expect([least.saved.value, most.saved.value]).toEqual([-2900, -7400]);
    expect((least.forecast.value ?? 0) / 9600).toBeCloseTo(1.3, 1);
    expect((most.forecast.value ?? 0) / 9600).toBeCloseTo(1.8, 1);
  });
});

describe('a bookcase planned at $87 that came to about $200, visualfoodie.com, cost of a DIY bookcase', () => {
  it('is over its budget by 130 %, under headings that nobody had planned', () => {
    const ledger = ledgerOf({
      budgets: [{ id: '1', category: 'boards', amountMinor: 8700 }],
      payments: [
        aPayment('1', 8700, { category: 'boards' }),
        aPayment('2', 11300, { category: 'hardware', note: 'screws, conditioner, sandpaper, clamps' }),
      ],
    });
    expect(ledger.totals.left.value).toBe(-11300);
    expect(Math.round(((ledger.totals.paid.value ?? 0) / 8700 - 1) * 100)).toBe(130);
    expect(headingOf(ledger, 'boards').left).toBe(0);
    expect(headingOf(ledger, 'hardware')).toMatchObject({ budget: null, planned: 0, paid: 11300 });
  });
});
