import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { saturationVapourPressurePa } from '../../../server/planning/climate/saturation-vapour-pressure-pa.ts';

describe('saturationVapourPressurePa', () => {
  it('gives its worked example', () => {
    // Docblock; 2338.80 Pa at 20 C from an independent program that implements the same ASHRAE equations.
    expect(saturationVapourPressurePa(20)).toBeCloseTo(2338.8, 2);
  });

  it('changes from ice to water at the triple point without a step', () => {
    // 611.657 Pa is the triple-point pressure of water (CODATA key value, 611.657 +- 0.010 Pa, from memory).
    expect(saturationVapourPressurePa(0.01)).toBeCloseTo(611.657, 3);
    expect(saturationVapourPressurePa(0.010000001) / saturationVapourPressurePa(0.01)).toBeCloseTo(1, 7);
  });

  it('rises with temperature over its whole range', () => {
    const temperature = fc.double({ min: -100, max: 199, noNaN: true });
    fc.assert(
      fc.property(temperature, fc.double({ min: 1e-3, max: 1, noNaN: true }), (airC, step) => {
        expect(saturationVapourPressurePa(airC + step)).toBeGreaterThan(saturationVapourPressurePa(airC));
      }),
    );
  });

  it('accepts both ends of its range', () => {
    expect(saturationVapourPressurePa(-100)).toBeGreaterThan(0);
    expect(saturationVapourPressurePa(200)).toBeGreaterThan(1e6);
  });

  it.each([Number.NaN, -100.1, 200.1, Number.POSITIVE_INFINITY])('refuses %d C', (airC) => {
    expect(() => saturationVapourPressurePa(airC)).toThrow(/airC must be between -100 and 200 C, got/);
  });
});
