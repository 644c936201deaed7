import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionalChangeMm } from '../../../server/planning/climate/dimensional-change-mm.ts';
import { equilibriumMoisturePercent } from '../../../server/planning/climate/equilibrium-moisture-percent.ts';
import { moistureGapPercent } from '../../../server/planning/climate/moisture-gap-percent.ts';
import { WOOD_MOVEMENT } from '../../../server/planning/climate/wood-movement.ts';

describe('equilibriumMoisturePercent', () => {
  it('is nothing in bone-dry air', () => {
    expect(equilibriumMoisturePercent(20, 0)).toBe(0);
  });

  it('rises with humidity at every shop temperature', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 45, noNaN: true }),
        fc.double({ min: 0, max: 99, noNaN: true }),
        (airC, percent) => {
          const drier = equilibriumMoisturePercent(airC, percent);
          expect(equilibriumMoisturePercent(airC, percent + 1)).toBeGreaterThan(drier);
        },
      ),
    );
  });

  it.each([
    [-2, 50],
    [140, 50],
    [20, 101],
    [20, -1],
    [Number.NaN, 50],
  ])('refuses %d C and %d percent', (airC, percent) => {
    expect(() => equilibriumMoisturePercent(airC, percent)).toThrow(RangeError);
  });
});

describe('moistureGapPercent', () => {
  it('gives its worked example', () => {
    // 12 - 9.27 (equation at 20 C, 50 %, worked by hand from FPL-RN-0268) = 2.73.
    expect(moistureGapPercent(12, 20, 50)).toBeCloseTo(2.73, 2);
  });

  it('is below zero for wood that will take up water', () => {
    expect(moistureGapPercent(6, 20, 65)).toBeCloseTo(-6, 2);
  });

  it('refuses a moisture content below nothing', () => {
    expect(() => moistureGapPercent(-1, 20, 50)).toThrow(/woodMoisturePercent/);
  });
});

describe('dimensionalChangeMm', () => {
  const redOak = WOOD_MOVEMENT['red-oak'];

  it('gives its worked example, flat-sawn and quarter-sawn', () => {
    // 100 x 0.00369 x 3 = 1.107; 100 x 0.00158 x 3 = 0.474.
    expect(dimensionalChangeMm(100, redOak.tangentialPerPercent, 8, 11).changeMm).toBeCloseTo(1.107, 6);
    expect(dimensionalChangeMm(100, redOak.radialPerPercent, 8, 11).changeMm).toBeCloseTo(0.474, 6);
  });

  it('shrinks on drying by as much as it grows on wetting', () => {
    const grows = dimensionalChangeMm(250, redOak.tangentialPerPercent, 7, 12).changeMm;
    expect(dimensionalChangeMm(250, redOak.tangentialPerPercent, 12, 7).changeMm).toBe(-grows);
  });

  it('says when a moisture content lies outside the published 6 to 14 percent', () => {
    expect(dimensionalChangeMm(100, 0.003, 6, 14).withinPublishedRange).toBe(true);
    expect(dimensionalChangeMm(100, 0.003, 5.9, 14).withinPublishedRange).toBe(false);
    expect(dimensionalChangeMm(100, 0.003, 6, 14.1).withinPublishedRange).toBe(false);
  });

  it('gives nothing, without a minus sign, for no width or no change', () => {
    expect(Object.is(dimensionalChangeMm(0, 0.003, 12, 8).changeMm, 0)).toBe(true);
    expect(dimensionalChangeMm(100, 0.003, 9, 9).changeMm).toBe(0);
  });

  it.each([
    [-1, 0.003, 8, 9],
    [100, 0.3, 8, 9],
    [100, 0.003, -1, 9],
    [100, 0.003, 8, 31],
    [Number.NaN, 0.003, 8, 9],
  ])('refuses width %d, coefficient %d, %d to %d percent', (width, coefficient, from, to) => {
    expect(() => dimensionalChangeMm(width, coefficient, from, to)).toThrow(RangeError);
  });
});
