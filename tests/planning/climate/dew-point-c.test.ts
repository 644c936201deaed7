import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dewPointC } from '../../../server/planning/climate/dew-point-c.ts';
import { saturationVapourPressurePa } from '../../../server/planning/climate/saturation-vapour-pressure-pa.ts';

describe('dewPointC', () => {
  it('gives its worked example', () => {
    // Docblock; 13.86 C from two independent programs.
    expect(dewPointC(25, 50)).toBeCloseTo(13.86, 2);
  });

  it('is exactly the air temperature in saturated air', () => {
    for (const airC of [-40, -0.5, 0, 0.01, 0.02, 21.3, 60]) expect(dewPointC(airC, 100)).toBe(airC);
  });

  it('turns back into the vapour pressure it came from, and never passes the air temperature', () => {
    const air = fc.double({ min: -60, max: 150, noNaN: true });
    const humidity = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(air, humidity, (airC, percent) => {
        const dewC = dewPointC(airC, percent);
        expect(dewC).toBeLessThanOrEqual(airC);
        const vapourPa = (saturationVapourPressurePa(airC) * percent) / 100;
        // 1e-8: the gap between the two curves at the triple point.
        expect(Math.abs(saturationVapourPressurePa(dewC) / vapourPa - 1)).toBeLessThan(1e-8);
      }),
      { numRuns: 500 },
    );
  });

  it('settles on the triple point for a pressure between the curves over ice and over water', () => {
    // Over ice 611.65702439 Pa and over water 611.65702793 Pa at 0.01 C: between them lies 611.657026 Pa.
    const percent = (611.657026 * 100) / saturationVapourPressurePa(20);
    expect(dewPointC(20, percent)).toBe(0.01);
  });

  it('rises with humidity and with temperature', () => {
    const air = fc.double({ min: -30, max: 60, noNaN: true });
    const humidity = fc.double({ min: 1, max: 98, noNaN: true });
    fc.assert(
      fc.property(air, humidity, (airC, percent) => {
        expect(dewPointC(airC, percent + 1)).toBeGreaterThan(dewPointC(airC, percent));
        expect(dewPointC(airC + 1, percent)).toBeGreaterThan(dewPointC(airC, percent));
      }),
    );
  });

  it('refuses air without a dew point', () => {
    expect(() => dewPointC(20, 0)).toThrow(/vapour pressure must be a number not below/);
  });

  it.each([
    [Number.NaN, 50],
    [20, Number.NaN],
    [20, -1],
    [20, 100.1],
    [201, 50],
  ])('refuses %d C and %d percent', (airC, percent) => {
    expect(() => dewPointC(airC, percent)).toThrow(RangeError);
  });
});
