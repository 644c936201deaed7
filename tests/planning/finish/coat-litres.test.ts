import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coatLitres } from '../../../server/planning/finish/coat-litres.ts';

const NEUTRAL = { transferEfficiency: 1, firstCoatFactor: 1, lossShare: 0, sessionLossL: 0 };

describe('litres of a coat', () => {
  it('are area over coverage, and nothing else, when nothing is lost', () => {
    expect(coatLitres({ areaM2: 6, coverageM2PerL: 12, ...NEUTRAL })).toBe(0.5); // 6 / 12
  });

  it('grow with overspray, bare wood, loss and what stays behind, in that order', () => {
    // 6 / (12 x 0.5) = 1; x 1.2 = 1.2; x 1.05 = 1.26; + 0.05 = 1.31
    const all = { transferEfficiency: 0.5, firstCoatFactor: 1.2, lossShare: 0.05, sessionLossL: 0.05 };
    expect(coatLitres({ areaM2: 6, coverageM2PerL: 12, ...all })).toBeCloseTo(1.31, 12);
  });

  it('are none for no area, though a session would leave something behind', () => {
    expect(coatLitres({ areaM2: 0, coverageM2PerL: 12, ...NEUTRAL, sessionLossL: 0.3 })).toBe(0);
  });

  it('stay exact for the largest sensible shop: 100,000 m2', () => {
    expect(coatLitres({ areaM2: 100_000, coverageM2PerL: 10, ...NEUTRAL })).toBe(10_000);
  });

  it('never fall when the area, the loss or the overspray rises', () => {
    const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(positive, positive, share, share, positive, (area, coverage, low, high, more) => {
        const at = (areaM2: number, transferEfficiency: number, lossShare: number): number =>
          coatLitres({ ...NEUTRAL, areaM2, coverageM2PerL: coverage, transferEfficiency, lossShare });
        expect(at(area + more, 1, 0)).toBeGreaterThanOrEqual(at(area, 1, 0));
        expect(at(area, Math.min(low, high), 0)).toBeGreaterThanOrEqual(at(area, Math.max(low, high), 0));
        expect(at(area, 1, Math.max(low, high))).toBeGreaterThanOrEqual(at(area, 1, Math.min(low, high)));
      }),
    );
  });

  it.each([
    ['areaM2', { areaM2: -1 }],
    ['areaM2', { areaM2: Number.NaN }],
    ['coverageM2PerL', { coverageM2PerL: 0 }],
    ['transferEfficiency', { transferEfficiency: 0 }],
    ['transferEfficiency', { transferEfficiency: 1.01 }],
    ['firstCoatFactor', { firstCoatFactor: 0 }],
    ['lossShare', { lossShare: -0.1 }],
    ['sessionLossL', { sessionLossL: Number.POSITIVE_INFINITY }],
  ])('refuse a %s outside its range, and name it', (name, wrong) => {
    expect(() => coatLitres({ areaM2: 1, coverageM2PerL: 10, ...NEUTRAL, ...wrong })).toThrow(name);
  });
});
