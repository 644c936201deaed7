import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airChangesToM3PerMin,
  ft3PerMinToM3PerMin,
  m3PerMinToAirChanges,
  m3PerMinToFt3PerMin,
} from '../../../server/planning/air/convert-airflow.ts';
import { lelMgPerM3 } from '../../../server/planning/air/lel-mg-per-m3.ts';
import { mgPerM3ToPpm } from '../../../server/planning/air/mg-per-m3-to-ppm.ts';
import { molarVolumeL } from '../../../server/planning/air/molar-volume-l.ts';
import { ppmToMgPerM3 } from '../../../server/planning/air/ppm-to-mg-per-m3.ts';
import { vapourVolumeL } from '../../../server/planning/air/vapour-volume-l.ts';

const positive = fc.double({ min: 1e-3, max: 1e6, noNaN: true });

describe('molarVolumeL', () => {
  it('gives its worked example', () => {
    // 8.314462618 x 294.261 K / 101.325 kPa = 24.146 L/mol at 70 F.
    expect(molarVolumeL(21.111)).toBeCloseTo(24.146, 3);
  });

  it('is 22.414 L/mol at 0 C', () => {
    // Molar volume of an ideal gas at 273.15 K and 101 325 Pa: 22.41397 L/mol (CODATA).
    expect(molarVolumeL(0)).toBeCloseTo(22.41397, 4);
  });

  it.each([Number.NaN, -41, 101])('refuses %d C', (airC) => {
    expect(() => molarVolumeL(airC)).toThrow(/airC must be between -40 and 100 C/);
  });
});

describe('ppmToMgPerM3 and mgPerM3ToPpm', () => {
  it('turn one into the other and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 1, max: 1000, noNaN: true }),
        (ppm, mass) => {
          expect(mgPerM3ToPpm(ppmToMgPerM3(ppm, mass), mass)).toBeCloseTo(ppm, 6);
        },
      ),
    );
  });

  it('give their worked examples', () => {
    // 100 x 92.1 / 24.45 = 376.69; 350 x 24.45 / 144 = 59.43.
    expect(ppmToMgPerM3(100, 92.1)).toBeCloseTo(376.69, 2);
    expect(mgPerM3ToPpm(350, 144)).toBeCloseTo(59.43, 2);
  });

  it.each([
    [Number.NaN, 92],
    [-1, 92],
    [1_000_001, 92],
    [10, 0],
    [10, Number.NaN],
  ])('refuse %d ppm at %d g/mol', (ppm, mass) => {
    expect(() => ppmToMgPerM3(ppm, mass)).toThrow(RangeError);
    if (!(ppm > 1e6)) expect(() => mgPerM3ToPpm(ppm, mass)).toThrow(RangeError);
  });
});

describe('airflow conversions', () => {
  it('give their worked examples', () => {
    expect(airChangesToM3PerMin(6, 50)).toBe(5);
    expect(m3PerMinToAirChanges(5, 50)).toBe(6);
    // 100 x 0.028316846592 (exact foot) = 2.8317.
    expect(ft3PerMinToM3PerMin(100)).toBeCloseTo(2.8316846592, 10);
  });

  it('turn back into what they came from', () => {
    fc.assert(
      fc.property(positive, positive, (flow, volume) => {
        expect(m3PerMinToAirChanges(airChangesToM3PerMin(flow, volume), volume) / flow).toBeCloseTo(1, 12);
        expect(m3PerMinToFt3PerMin(ft3PerMinToM3PerMin(flow)) / flow).toBeCloseTo(1, 12);
      }),
    );
  });

  it('refuse a room of no volume and airflow below nothing', () => {
    expect(() => airChangesToM3PerMin(6, 0)).toThrow(/volumeM3/);
    expect(() => m3PerMinToAirChanges(-1, 50)).toThrow(/airflowM3PerMin/);
    expect(() => ft3PerMinToM3PerMin(Number.NaN)).toThrow(RangeError);
    expect(() => m3PerMinToFt3PerMin(-1)).toThrow(RangeError);
  });
});

describe('vapourVolumeL', () => {
  it('gives its worked example', () => {
    // 870 g / 92.14 g/mol x 24.146 L/mol = 227.99 L.
    expect(vapourVolumeL(1, 870, 92.14, 21.111)).toBeCloseTo(227.99, 1);
  });

  it('is nothing for nothing, and twice as much for twice the liquid', () => {
    expect(vapourVolumeL(0, 870, 92.14, 20)).toBe(0);
    expect(vapourVolumeL(2, 870, 92.14, 20)).toBe(2 * vapourVolumeL(1, 870, 92.14, 20));
  });

  it.each([
    [-1, 870, 92],
    [1, 87, 92],
    [1, 870, 0],
    [Number.NaN, 870, 92],
  ])('refuses %d L of %d g/L at %d g/mol', (litres, density, mass) => {
    expect(() => vapourVolumeL(litres, density, mass, 20)).toThrow(RangeError);
  });
});

describe('lelMgPerM3', () => {
  it('gives its worked example', () => {
    // 0.007 x 1000 L / 24.0553 L/mol x 144 g/mol = 41.903 g/m3 at 20 C.
    expect(lelMgPerM3(0.7, 144, 20)).toBeCloseTo(41_903, -1);
  });

  it.each([0, -1, 101, Number.NaN])('refuses an LEL of %d percent', (percent) => {
    expect(() => lelMgPerM3(percent, 144, 20)).toThrow(/lelPercent/);
  });
});
