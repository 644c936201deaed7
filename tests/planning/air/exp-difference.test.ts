import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expDifference, expSecondDifference } from '../../../server/planning/air/exp-difference.ts';

const point = fc.double({ min: -50, max: 0, noNaN: true });

describe('expDifference', () => {
  it('gives its worked example', () => {
    // 1 - 1/e = 0.6321205588285577.
    expect(expDifference(0, -1)).toBeCloseTo(0.6321205588285577, 15);
  });

  it('is the exponential itself where the points meet', () => {
    expect(expDifference(-2, -2)).toBe(Math.exp(-2));
  });

  it('keeps its digits for points that nearly meet', () => {
    // Series about the middle m: e^m (1 + d^2/24 + ...), d the distance.
    for (const distance of [1e-3, 1e-6, 1e-9, 1e-12]) {
      const middle = Math.exp(-1 - distance / 2) * (1 + distance ** 2 / 24);
      expect(Math.abs(expDifference(-1, -1 - distance) / middle - 1)).toBeLessThan(1e-14);
    }
  });

  it('lies between the two exponentials and does not mind their order', () => {
    fc.assert(
      fc.property(point, point, (a, b) => {
        const mean = expDifference(a, b);
        expect(mean).toBe(expDifference(b, a));
        expect(mean).toBeGreaterThanOrEqual(Math.exp(Math.min(a, b)) * (1 - 1e-15));
        expect(mean).toBeLessThanOrEqual(Math.exp(Math.max(a, b)) * (1 + 1e-15));
      }),
    );
  });
});

describe('expSecondDifference', () => {
  it('gives its worked example', () => {
    // (1 - (1 - 1/e)) / 1 = 1/e.
    expect(expSecondDifference(0, 0, -1)).toBeCloseTo(Math.exp(-1), 15);
  });

  it('is half of the exponential where all points meet', () => {
    expect(expSecondDifference(-3, -3, -3)).toBeCloseTo(Math.exp(-3) / 2, 16);
  });

  it('agrees with the integral it stands for', () => {
    // Hermite-Genocchi: the integral of e^(a + s (b - a) + t (c - a)) over the triangle s, t >= 0, s + t <= 1, reduced to
    // one integral of expDifference over s and done by Simpson's rule with 2000 steps.
    const byIntegral = (a: number, b: number, c: number) => {
      const steps = 2000;
      let sum = 0;
      for (let step = 0; step <= steps; step += 1) {
        const s = step / steps;
        const weight = step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2;
        sum += weight * (1 - s) * expDifference(a + s * (b - a), c + s * (b - c));
      }
      return sum / (3 * steps);
    };
    fc.assert(
      fc.property(point, point, point, (a, b, c) => {
        expect(expSecondDifference(a, b, c) / byIntegral(a, b, c)).toBeCloseTo(1, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('does not jump where the series hands over to the recursion', () => {
    for (const [a, b, c] of [
      [0, -0.05, -0.1],
      [-3, -3.1, -3.02],
      [-1, -1, -1.1],
    ] as const) {
      const below = expSecondDifference(a, b + 1e-13, c + 1e-13);
      const above = expSecondDifference(a, b - 1e-13, c - 1e-13);
      expect(Math.abs(below / above - 1)).toBeLessThan(2e-13);
    }
  });

  it('does not mind the order of the points', () => {
    fc.assert(
      fc.property(point, point, point, (a, b, c) => {
        expect(expSecondDifference(c, a, b)).toBe(expSecondDifference(a, b, c));
      }),
    );
  });
});
