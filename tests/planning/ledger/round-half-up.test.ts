import { describe, expect, it } from 'vitest';
import { roundHalfUp } from '../../../server/planning/ledger/round-half-up.ts';

describe('rounding to whole minor units', () => {
  it.each([
    [0, 0],
    [82.49, 82],
    [82.4999, 82],
    [82.5, 83],
    [82.51, 83],
    [83, 83],
    [1.005 * 100, 101], // 100.49999999999999 in floating point
    [9_007_199_254_740_990, 9_007_199_254_740_990],
  ])('makes %s %s: a half goes up', (minor, whole) => {
    expect(roundHalfUp(minor)).toBe(whole);
  });

  it('refuses what is no amount of money', () => {
    for (const wrong of [-1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => roundHalfUp(wrong)).toThrow('minor');
  });
});
