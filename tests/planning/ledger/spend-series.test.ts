import { describe, expect, it } from 'vitest';
import { anOrder, anOrderLine, aPayment, aReceipt, ledgerOf, TODAY } from './ledger-project.ts';

const point = (date: string, orderedMinor: number, paidMinor: number) => ({ date, orderedMinor, paidMinor });

describe('the course of the spending', () => {
  it('takes returns off on the day they went back, tax rounded as it then is', () => {
    // 3 x 1.49 = 4.47, tax 8.5 % 0.37995 rounded 0.38: 4.85. Two kept: 2.98 and 0.2533 rounded 0.25: 3.23. One: 1.49 and
    // 0.12665 rounded 0.13: 1.62.
    const { series, totals } = ledgerOf({
      settings: { taxPercent: 8.5 },
      orders: [anOrder('1', { date: '2027-03-01' })],
      orderLines: [anOrderLine('1', '1', 'glue', 3, 149)],
      receipts: [
        aReceipt('1', '1', 'returned', 1, '2027-03-09'),
        aReceipt('2', '1', 'returned', 1, '2027-03-04'),
        aReceipt('3', '1', 'received', 3, '2027-03-02'),
      ],
    });
    expect(series).toEqual([
      point('2027-03-01', 485, 0),
      point('2027-03-04', 323, 0),
      point('2027-03-09', 162, 0),
    ]);
    expect(totals.ordered.value).toBe(162);
  });

  it('joins what happened on one day, in order of date whatever the order of entry', () => {
    const { series } = ledgerOf({
      payments: [
        aPayment('1', 300, { date: '2027-03-05' }),
        aPayment('2', 100, { date: '2027-02-27' }),
        aPayment('3', 50, { date: '2027-03-05', kind: 'refund' }),
      ],
    });
    expect(series).toEqual([point('2027-02-27', 100, 100), point('2027-03-05', 350, 350)]);
  });

  it('counts what has no date from the first day on, or today where nothing has one', () => {
    const undated = aPayment('1', 100, { date: '' });
    expect(ledgerOf({ payments: [undated] }).series).toEqual([point(TODAY, 100, 100)]);
    expect(ledgerOf({ payments: [undated, aPayment('2', 20, { date: '2027-01-02' })] }).series).toEqual([
      point('2027-01-02', 120, 120),
    ]);
  });
});
