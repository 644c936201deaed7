import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterMonths } from '../../../../server/planning/buying/stock/after-months.ts';
import { expiredOnHand } from '../../../../server/planning/buying/stock/expired-on-hand.ts';
import { type StockPart, takeFromStock } from '../../../../server/planning/buying/stock/take-from-stock.ts';
import type { OnHand } from '../../../../server/planning/project-input.ts';
import { aProduct } from '../../finish/sample-project.ts';
import { PLAIN_STOCK } from '../../ledger/no-ledger.ts';

const part = (amount: number, more: Partial<StockPart> = {}): StockPart => ({
  from: 'onHand',
  id: '1',
  amount,
  arrivedOn: '',
  opened: false,
  goodUntil: null,
  ...more,
});

describe('a day so many months later', () => {
  it('is the same day of the month, or the last of a shorter one', () => {
    expect(afterMonths('2027-01-31', 1)).toBe('2027-02-28');
    expect(afterMonths('2028-01-31', 1)).toBe('2028-02-29');
    expect(afterMonths('2027-11-15', 14)).toBe('2029-01-15');
    expect(afterMonths('2027-12-31', 0)).toBe('2027-12-31');
    // half a month is 15 days
    expect(afterMonths('2027-03-01', 0.5)).toBe('2027-03-16');
    expect(afterMonths('9999-01-01', 24)).toBe('9999-12-31');
    expect(() => afterMonths('2027-01-01', -1)).toThrow(RangeError);
  });
});

describe('leftovers past their date', () => {
  const varnish = aProduct('varnish', 'finish', { shelfLifeOpened: 6 });
  const row = (id: string, more: Partial<OnHand>): OnHand => ({
    id,
    productId: 'varnish',
    amount: 1,
    count: 1,
    lengthMm: null,
    widthMm: null,
    ...PLAIN_STOCK,
    ...more,
  });
  it('are those whose last good day is over: the printed date, or opening and shelf life', () => {
    const rows = [
      row('1', { bestBefore: '2027-04-10' }),
      row('2', { bestBefore: '2027-04-11' }),
      // opened 10 October 2026, 6 months: good until 10 April 2027
      row('3', { openedOn: '2026-10-10' }),
      row('4', { openedOn: '2026-10-11' }),
      // the printed date goes before the shelf life
      row('5', { openedOn: '2020-01-01', bestBefore: '2027-12-31' }),
      row('6', {}),
    ];
    expect([...expiredOnHand(rows, [varnish], '2027-04-11')]).toEqual(['1', '3']);
    // A shelf life that is not known makes nothing old.
    expect([...expiredOnHand(rows, [aProduct('varnish', 'finish')], '2027-04-11')]).toEqual(['1']);
  });
});

describe('what is taken from stock', () => {
  it('comes from leftovers first, opened ones and the earlier date before the rest', () => {
    const parts = [
      part(1, { from: 'receipts', arrivedOn: '2027-03-01' }),
      part(1),
      part(0.5, { goodUntil: '2027-06-01' }),
      part(0.25, { opened: true }),
    ];
    // 1 L on 5 March: 0.25 opened, 0.5 with the earlier date, 0.25 of the whole leftover
    expect(takeFromStock(parts, [{ date: '2027-03-05', amount: 1 }]).left).toEqual([1, 0.75, 0, 0]);
  });

  it('comes from what was there and good on that day; else from the rest, and beyond it is said', () => {
    const parts = [
      part(1, { goodUntil: '2027-03-01' }),
      part(1, { from: 'receipts', arrivedOn: '2027-03-10' }),
      part(1, { from: 'receipts', arrivedOn: '2027-03-02' }),
    ];
    expect(takeFromStock(parts, [{ date: '2027-03-05', amount: 1 }]).left).toEqual([1, 1, 0]);
    expect(takeFromStock(parts, [{ date: '2027-03-05', amount: 2 }]).left).toEqual([1, 0, 0]);
    expect(takeFromStock(parts, [{ date: '2027-03-05', amount: 3.5 }])).toEqual({
      left: [0, 0, 0],
      beyond: 0.5,
    });
  });

  it('never makes or loses any: what is left and what was taken is what was there and what was beyond', () => {
    const amount = fc.integer({ min: 0, max: 500 }).map((value) => value / 100);
    const date = fc.constantFrom('', '2027-03-01', '2027-03-05', '2027-04-01');
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            from: fc.constantFrom('onHand' as const, 'receipts' as const),
            id: fc.constant('1'),
            amount,
            arrivedOn: date,
            opened: fc.boolean(),
            goodUntil: fc.constantFrom(null, '2027-03-03', '2027-05-01'),
          }),
          { maxLength: 6 },
        ),
        fc.array(fc.record({ date, amount }), { maxLength: 6 }),
        (parts, taken) => {
          const { left, beyond } = takeFromStock(parts, taken);
          const sum = (values: readonly number[]): number =>
            values.reduce((total, value) => total + value, 0);
          for (const value of [...left, beyond]) expect(value).toBeGreaterThanOrEqual(0);
          for (const [at, value] of left.entries()) expect(value).toBeLessThanOrEqual(parts[at]?.amount ?? 0);
          expect(sum(left) + sum(taken.map((one) => one.amount))).toBeCloseTo(
            sum(parts.map((one) => one.amount)) + beyond,
            9,
          );
        },
      ),
      { numRuns: 500, seed: 20270301 },
    );
  });
});
