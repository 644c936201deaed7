import { describe, expect, it } from 'vitest';
import { fractionHalfUp } from '../../../server/planning/ledger/fraction-half-up.ts';

describe('a fraction of an amount', () => {
  it('is rounded to the nearest unit, a half away from nothing', () => {
    // 8.25 % of 10.00 is 82.5; just below and just above: 81.75 (9.91) is 82, 82.58 (10.01) is 83.
    expect(fractionHalfUp(1000, 82_500, 1_000_000)).toBe(83);
    expect(fractionHalfUp(991, 82_500, 1_000_000)).toBe(82);
    expect(fractionHalfUp(1001, 82_500, 1_000_000)).toBe(83);
    expect(fractionHalfUp(101, 1, 2)).toBe(51);
    expect(fractionHalfUp(-101, 1, 2)).toBe(-51);
  });

  it('of nothing, or of no part, is nothing and never -0', () => {
    expect(Object.is(fractionHalfUp(-1, 1, 3), 0)).toBe(true);
    expect(fractionHalfUp(0, 5, 7)).toBe(0);
    expect(fractionHalfUp(999, 0, 7)).toBe(0);
  });

  it('is exact where floating point is not', () => {
    // 1,000,000,000,000.00 x 0.07 = 70,000,000,000.00 exactly.
    expect(fractionHalfUp(100_000_000_000_000, 70_000, 1_000_000)).toBe(7_000_000_000_000);
  });

  it('refuses what is no whole number', () => {
    expect(() => fractionHalfUp(0.5, 1, 2)).toThrow(RangeError);
    expect(() => fractionHalfUp(1, -1, 2)).toThrow(RangeError);
    expect(() => fractionHalfUp(1, 1, 0)).toThrow(RangeError);
  });
});
