import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstFitDecreasing } from '../../../server/planning/cutting/first-fit-decreasing.ts';

/** The same rule written the slow way: look at every bin in turn. */
function slowTwin(lengths: readonly number[], capacity: number, kerf: number): number[] {
  const order = lengths
    .map((_, item) => item)
    .sort((a, b) => Number(lengths[b]) - Number(lengths[a]) || a - b);
  const used: number[] = [];
  const binOf = lengths.map(() => -1);
  for (const item of order) {
    const length = Number(lengths[item]);
    let bin = used.findIndex((taken) => taken + kerf + length <= capacity + 1e-6);
    if (bin < 0) bin = used.push(-kerf) - 1;
    used[bin] = Number(used[bin]) + kerf + length;
    binOf[item] = bin;
  }
  return binOf;
}

describe('firstFitDecreasing', () => {
  it('puts the longest piece first and every piece in the first bin with room', () => {
    // By hand, capacity 10: 6 opens bin 0; the fives open and fill bin 1; 4 goes back to bin 0.
    expect(firstFitDecreasing([6, 4, 5, 5], 10)).toEqual([0, 0, 1, 1]);
  });

  it('counts a kerf between neighbours and none after the last', () => {
    // 2 x 1198.5 + 3 = 2400 fits exactly; 2 x 1198.6 + 3 = 2400.2 does not.
    expect(firstFitDecreasing([1198.5, 1198.5], 2400, 3)).toEqual([0, 0]);
    expect(firstFitDecreasing([1198.6, 1198.6], 2400, 3)).toEqual([0, 1]);
  });

  it('takes a piece as long as the bin, even with a kerf', () => {
    expect(firstFitDecreasing([2400, 2400], 2400, 3)).toEqual([0, 1]);
  });

  it('fits fractions of an inch that add up to the bin exactly', () => {
    const third = (96 * 25.4) / 3;
    expect(firstFitDecreasing([third, third, third], 96 * 25.4)).toEqual([0, 0, 0]);
  });

  it('answers an empty list with an empty list', () => {
    expect(firstFitDecreasing([], 10)).toEqual([]);
  });

  it('refuses a piece that is longer than the bin, not positive, or not a number', () => {
    for (const bad of [10.1, 0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => firstFitDecreasing([bad], 10)).toThrow(RangeError);
  });

  it('refuses a capacity or kerf that is not a length', () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => firstFitDecreasing([1], bad)).toThrow(RangeError);
    for (const bad of [-0.1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => firstFitDecreasing([1], 10, bad)).toThrow(RangeError);
  });

  it('agrees with the slow way of looking at every bin', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 100 }), { maxLength: 60 }),
        fc.integer({ min: 0, max: 5 }),
        (lengths, kerf) => {
          expect(firstFitDecreasing(lengths, 100, kerf)).toEqual(slowTwin(lengths, 100, kerf));
        },
      ),
    );
  });
});
