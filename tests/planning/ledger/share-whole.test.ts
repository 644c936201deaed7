import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareWhole } from '../../../server/planning/ledger/share-whole.ts';

describe('sharing a whole amount', () => {
  it('follows the weights, and gives what is left over to the largest remainders', () => {
    // 100 over 3, 2, 2: 42.857, 28.571, 28.571: 42 + 28 + 28 = 98; two units left, to the first (.857) and the second (.571).
    expect(shareWhole(100, [3, 2, 2])).toEqual([43, 29, 28]);
    // 10 over 1, 4: 2 and 8, nothing left.
    expect(shareWhole(10, [1, 4])).toEqual([2, 8]);
  });

  it('gives of equal remainders the earlier one the unit', () => {
    expect(shareWhole(100, [1, 1, 1])).toEqual([34, 33, 33]);
    expect(shareWhole(2, [1, 1, 1])).toEqual([1, 1, 0]);
  });

  it('shares what comes back as what went out', () => {
    expect(shareWhole(-100, [1, 1, 1])).toEqual([-34, -33, -33]);
  });

  it('takes weights of any size, with decimals too', () => {
    expect(shareWhole(1000, [0.1, 0.2, 0])).toEqual([333, 667, 0]);
    expect(shareWhole(9_000_000_000_000_000, [1, 1])).toEqual([4_500_000_000_000_000, 4_500_000_000_000_000]);
  });

  it('cannot share by weights of nothing', () => {
    expect(shareWhole(5, [0, 0])).toBe(null);
    expect(shareWhole(0, [])).toBe(null);
    expect(shareWhole(0, [3])).toEqual([0]);
  });

  it('loses and makes no unit, and gives nobody a whole unit too much or too little', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }),
        fc.array(fc.nat({ max: 100_000 }), { minLength: 1, maxLength: 12 }),
        (total, weights) => {
          const shares = shareWhole(total, weights);
          const sum = weights.reduce((one, other) => one + other, 0);
          if (shares === null) return expect(sum).toBe(0);
          expect(shares.reduce((one, other) => one + other, 0)).toBe(total);
          for (const [index, share] of shares.entries())
            expect(Math.abs(share - (total * (weights[index] ?? 0)) / sum)).toBeLessThan(1);
        },
      ),
      { seed: 5 },
    );
  });

  it('refuses what is no whole amount and no weight', () => {
    expect(() => shareWhole(1.5, [1])).toThrow(RangeError);
    expect(() => shareWhole(1, [-1])).toThrow(RangeError);
    expect(() => shareWhole(1, [Number.NaN])).toThrow(RangeError);
  });
});
