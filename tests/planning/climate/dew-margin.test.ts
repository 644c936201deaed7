import { describe, expect, it } from 'vitest';
import { dewMargin } from '../../../server/planning/climate/dew-margin.ts';
import { dewPointC } from '../../../server/planning/climate/dew-point-c.ts';

describe('dewMargin', () => {
  it('gives its worked example', () => {
    // Docblock: dew point 10.75 C (independent program), 13 - 10.75 = 2.25.
    const margin = dewMargin(13, 16, 71);
    expect(margin.dewPointC).toBeCloseTo(10.75, 2);
    expect(margin.marginC).toBeCloseTo(2.25, 2);
    expect(margin.enough).toBe(false);
  });

  it('is enough at 3 C exactly, and not just below', () => {
    const dewC = dewPointC(20, 100);
    expect(dewMargin(dewC + 3, 20, 100).enough).toBe(true);
    expect(dewMargin(dewC + 2.999, 20, 100).enough).toBe(false);
  });

  it('goes below zero on a surface that is already wet', () => {
    expect(dewMargin(5, 20, 100).marginC).toBe(-15);
  });

  it('refuses a surface temperature that is not a number', () => {
    expect(() => dewMargin(Number.NaN, 20, 50)).toThrow(/surfaceC must be between/);
  });
});
