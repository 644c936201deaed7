import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { zeroBetween } from '../../../server/planning/air/zero-between.ts';

describe('zeroBetween', () => {
  it('gives its worked example', () => {
    expect(zeroBetween((x) => 2 - x, 0, 5)).toBeCloseTo(2, 8);
  });

  it('never stops short of the zero, and at most a thousand-millionth of the bracket beyond it', () => {
    // e^(-rate x) - level has its zero at ln(1 / level) / rate; steep ones are what false position alone is slow at.
    const rate = fc.double({ min: 1e-3, max: 200, noNaN: true });
    fc.assert(
      fc.property(rate, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (steep, share) => {
        const zero = share * Math.min(1, 300 / steep);
        const level = Math.exp(-steep * zero);
        const found = zeroBetween((x) => Math.exp(-steep * x) - level, 0, 1);
        // The zero itself is only known to the rounding of `level`.
        expect(found).toBeGreaterThanOrEqual(zero - 1e-9);
        expect(found).toBeLessThanOrEqual(zero + 2e-9);
      }),
      { numRuns: 300 },
    );
  });

  it('takes few steps', () => {
    let steps = 0;
    zeroBetween(
      (x) => {
        steps += 1;
        return Math.exp(-20 * x) - 0.5;
      },
      0,
      1,
    );
    expect(steps).toBeLessThan(30);
  });

  it('finds the step of a quantity that jumps', () => {
    expect(zeroBetween((x) => (x < 0.3 ? 1 : -1e9), 0, 1)).toBeCloseTo(0.3, 8);
  });
});
