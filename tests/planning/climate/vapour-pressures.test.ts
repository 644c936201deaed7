import { describe, expect, it } from 'vitest';
import { absoluteHumidityGPerM3 } from '../../../server/planning/climate/absolute-humidity-g-per-m3.ts';
import { vapourPressureDeficitPa } from '../../../server/planning/climate/vapour-pressure-deficit-pa.ts';
import { vapourPressurePa } from '../../../server/planning/climate/vapour-pressure-pa.ts';

describe('vapourPressurePa', () => {
  it('is the share of saturation that the humidity names', () => {
    // 2338.80 Pa x 0.5 = 1169.40 Pa.
    expect(vapourPressurePa(20, 50)).toBeCloseTo(1169.4, 1);
    expect(vapourPressurePa(20, 0)).toBe(0);
  });

  it.each([-0.1, 100.1, Number.NaN])('refuses %d percent', (percent) => {
    expect(() => vapourPressurePa(20, percent)).toThrow(
      /relativeHumidityPercent must be between 0 and 100 %/,
    );
  });
});

describe('vapourPressureDeficitPa', () => {
  it('is what is left up to saturation', () => {
    // 3169.22 Pa at 25 C (independent program) x 0.2 = 633.84 Pa.
    expect(vapourPressureDeficitPa(25, 80)).toBeCloseTo(633.84, 1);
  });

  it('is nothing in saturated air and adds up with the vapour pressure', () => {
    expect(vapourPressureDeficitPa(15, 100)).toBe(0);
    expect(vapourPressureDeficitPa(15, 37) + vapourPressurePa(15, 37)).toBeCloseTo(1705.45, 1);
  });

  it.each([-1, 101, Number.NaN])('refuses %d percent', (percent) => {
    expect(() => vapourPressureDeficitPa(20, percent)).toThrow(RangeError);
  });
});

describe('absoluteHumidityGPerM3', () => {
  it('gives its worked example', () => {
    // 18.015268 g/mol x 1169.40 Pa / (8.314463 J/(mol K) x 293.15 K) = 8.643 g/m3.
    expect(absoluteHumidityGPerM3(20, 50)).toBeCloseTo(8.643, 3);
  });

  it('agrees with the saturation humidity ratio of the ASHRAE table', () => {
    // ASHRAE Fundamentals 2017, ch. 1, Table 2: W = 0.020173 kg/kg at 25 C (tolerance 0.5 %, the ideal-gas error).
    // Per cubic metre: W times the mass of dry air, (101325 - 3169.2) Pa / (287.042 J/(kg K) x 298.15 K) = 1.1469 kg.
    const gramsPerM3 = 0.020173 * 1146.9;
    expect(Math.abs(absoluteHumidityGPerM3(25, 100) / gramsPerM3 - 1)).toBeLessThan(0.005);
  });

  it('is nothing in bone-dry air and refuses what is not a humidity', () => {
    expect(absoluteHumidityGPerM3(20, 0)).toBe(0);
    expect(() => absoluteHumidityGPerM3(20, Number.NaN)).toThrow(RangeError);
  });
});
