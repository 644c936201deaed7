import { describe, expect, it } from 'vitest';
import { dewMargin } from '../../server/planning/climate/dew-margin.ts';
import { dewPointC } from '../../server/planning/climate/dew-point-c.ts';
import { saturationVapourPressurePa } from '../../server/planning/climate/saturation-vapour-pressure-pa.ts';

describe('saturation pressures of ASHRAE Fundamentals 2017, chapter 1, Table 3', () => {
  // As quoted in the test files of a public psychrometric library, with its tolerance of 300 ppm: the table is rounded.
  it.each([
    [-20, 103.24],
    [-5, 401.74],
    [5, 872.6],
    [25, 3169.7],
    [50, 12351.3],
    [100, 101418.0],
    [150, 476101.4],
  ])('at %d C are %d Pa within 0.03 percent', (airC, pascal) => {
    expect(Math.abs(saturationVapourPressurePa(airC) / pascal - 1)).toBeLessThan(300e-6);
  });

  // The same table in US customary units; 1 psi = 6894.757 Pa (exact to the digits shown). Near the triple point the
  // four and five printed digits limit the comparison.
  it.each([
    [-4, 0.014974],
    [23, 0.058268],
    [41, 0.12656],
    [77, 0.45973],
    [122, 1.7914],
    [212, 14.7094],
    [300, 67.0206],
  ])('at %d F are %d psi within 0.03 percent', (fahrenheit, psi) => {
    const airC = ((fahrenheit - 32) * 5) / 9;
    expect(Math.abs(saturationVapourPressurePa(airC) / (psi * 6894.757) - 1)).toBeLessThan(300e-6);
  });
});

describe('saturation pressures and dew points of an independent program', () => {
  // Public npm package psychrolib 1.1.1, which implements the same ASHRAE chapter; figures to the digits it was read at.
  it.each([
    [0, 611.15],
    [10, 1228.0],
    [15, 1705.45],
    [20, 2338.8],
    [25, 3169.22],
    [30, 4246.03],
    [35, 5627.82],
  ])('give %d C the pressure %d Pa to the last digit', (airC, pascal) => {
    expect(Math.abs(saturationVapourPressurePa(airC) - pascal)).toBeLessThan(0.0051);
  });

  it.each([
    [10, 50, 0.06],
    [16, 71, 10.75],
    [20, 50, 9.27],
    [20, 65, 13.23],
    [21, 71, 15.55],
    [25, 50, 13.86],
    [25, 80, 21.31],
    [30, 80, 26.17],
  ])('give %d C and %d percent the dew point %d C to the last digit', (airC, percent, dewC) => {
    expect(Math.abs(dewPointC(airC, percent) - dewC)).toBeLessThan(0.0051);
  });

  it('give 25 C and 80 percent the dew point 21.3094 C', () => {
    // Header comment of the same library, version 2.5.0.
    expect(dewPointC(25, 80)).toBeCloseTo(21.3094, 3);
  });

  it('agree with the Magnus form within 0.02 C in a shop', () => {
    // Magnus with 17.625 and 243.04 C, whose deviation is least from -40 to 50 C (public encyclopaedia text).
    for (let airC = 5; airC <= 35; airC += 5)
      for (let percent = 40; percent <= 95; percent += 5) {
        const gamma = Math.log(percent / 100) + (17.625 * airC) / (243.04 + airC);
        const magnusC = (243.04 * gamma) / (17.625 - gamma);
        if (magnusC > 0.01) expect(Math.abs(dewPointC(airC, percent) - magnusC)).toBeLessThan(0.02);
      }
  });
});

describe('dew point examples of coatings training', () => {
  it('allow a surface at 19 C with the dew point at 15 C', () => {
    // Coatings training note: dry bulb 21 C, wet bulb 17 C, dew point 15 C (whole degrees), substrate 19 C, acceptable.
    // Humidity of that wet bulb, aspirated psychrometer at 101 325 Pa, pressures from the independent program:
    // 1938 - 0.000662 x 101 325 x (21 - 17) = 1670 Pa, of 2488 Pa at 21 C: 67.1 %. Dew point then 14.7 C.
    const margin = dewMargin(19, 21, 67.1);
    expect(Math.round(margin.dewPointC)).toBe(15);
    expect(margin.enough).toBe(true);
  });

  it('refuse a surface at 13 C in air of 16 C and 71 percent', () => {
    // Same note: dew point 11 C (whole degrees), margin 2 C.
    const margin = dewMargin(13, 16, 71);
    expect(Math.round(margin.dewPointC)).toBe(11);
    expect(Math.round(margin.marginC)).toBe(2);
    expect(margin.enough).toBe(false);
  });
});
