import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dualFeasibleFunctions } from '../../../server/planning/cutting/sheet-2d/dual-feasible-functions.ts';
import { sheetsBound } from '../../../server/planning/cutting/sheet-2d/sheets-bound.ts';
import { barBound } from '../../../server/planning/cutting/stock-1d/bar-bound.ts';

const EFFORT = 1_000_000;
const many = Number.POSITIVE_INFINITY;

describe('dualFeasibleFunctions', () => {
  it('never makes lengths laid end to end longer than what they were laid in', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 20 });
    const one = fc.integer({ min: 0, max: 100 });
    fc.assert(
      fc.property(lengths, one, one, (known, a, b) => {
        fc.pre(a + b <= 100);
        for (const image of dualFeasibleFunctions(100, known, 60))
          expect(image(a) + image(b)).toBeLessThanOrEqual(image(a + b) + 1e-9);
      }),
    );
  });

  it('gives the length itself first, and no more functions than asked for', () => {
    const functions = dualFeasibleFunctions(100, [30, 40], 1);
    expect(functions.map((image) => image(37))).toEqual([37]);
  });
});

describe('sheetsBound', () => {
  const sheet = { length: 10, width: 10, cost: 7, limit: many };

  it('counts pieces that cannot share a sheet, whatever their area', () => {
    // Three of 6 x 6: area 108 of 100 says two sheets; any two overlap in both directions, so three.
    const pieces = [{ length: 6, width: 6, count: 3, turnable: true }];
    expect(sheetsBound({ stocks: [sheet], pieces }, EFFORT)).toEqual({ cost: 21, stocks: 3 });
  });

  it('takes free stock off first and mixes whole sheets of several prices', () => {
    const pieces = [{ length: 10, width: 10, count: 3, turnable: false }];
    const free = { ...sheet, cost: 0, limit: 1 };
    expect(sheetsBound({ stocks: [free, sheet], pieces }, EFFORT)).toEqual({ cost: 14, stocks: 2 });
    // Area 300: a double sheet for 13 and a single for 7 cost 20, two doubles 26, three singles 21.
    const double = { length: 20, width: 10, cost: 13, limit: many };
    expect(sheetsBound({ stocks: [sheet, double], pieces }, EFFORT)).toEqual({ cost: 20, stocks: 2 });
  });

  it('is nothing for no pieces', () => {
    expect(sheetsBound({ stocks: [sheet], pieces: [] }, EFFORT)).toEqual({ cost: 0, stocks: 0 });
  });
});

describe('barBound', () => {
  it('counts lengths over half a bar as a bar each', () => {
    // Four of 6 and four of 5 in 10: the fives fill two bars, the sixes one each: 6, where length says 44 / 10 = 5.
    const pieces = [
      { length: 6, count: 4 },
      { length: 5, count: 4 },
    ];
    expect(barBound({ stocks: [{ length: 10, cost: 3, limit: many }], pieces })).toEqual({
      cost: 18,
      stocks: 6,
    });
  });
});
