import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLength } from '../../../server/planning/dimensions/read-length.ts';
import { formatLength, type LengthFormat } from '../../../server/planning/display/format-length.ts';

const METRIC: LengthFormat = { units: 'metric', inchStyle: 'fraction', inchDenominator: 16 };
const fraction = (inchDenominator: number): LengthFormat => ({
  units: 'us',
  inchStyle: 'fraction',
  inchDenominator,
});
const DECIMAL: LengthFormat = { units: 'us', inchStyle: 'decimal', inchDenominator: 16 };

describe('formatLength', () => {
  it('prints millimetres with at most one decimal, rounded half away from zero', () => {
    expect(formatLength(600, METRIC)).toBe('600 mm');
    expect(formatLength(12.5, METRIC)).toBe('12.5 mm');
    expect(formatLength(609.649, METRIC)).toBe('609.6 mm');
    expect(formatLength(609.65, METRIC)).toBe('609.7 mm');
    expect(formatLength(0.04, METRIC)).toBe('0 mm');
    expect(formatLength(-0.04, METRIC)).toBe('0 mm');
    expect(formatLength(-5, METRIC)).toBe('-5 mm');
    expect(formatLength(100_000, METRIC)).toBe('100000 mm');
  });

  it('prints inches as a fraction in lowest terms', () => {
    expect(formatLength(600.075, fraction(32))).toBe('23 5/8"'); // 23.625 x 25.4
    expect(formatLength(19.05, fraction(32))).toBe('3/4"');
    expect(formatLength(609.6, fraction(32))).toBe('24"');
    expect(formatLength(25.4 / 32, fraction(32))).toBe('1/32"');
    expect(formatLength(0, fraction(32))).toBe('0"');
    expect(formatLength(-19.05, fraction(32))).toBe('-3/4"');
  });

  it('carries a fraction that rounds up to a whole inch', () => {
    // 23.99 in in eighths: 191.92 steps, rounds to 192 = 24 in.
    expect(formatLength(23.99 * 25.4, fraction(8))).toBe('≈24"');
  });

  it('marks a fraction that only approximates the length', () => {
    // 600 mm = 23.622 in; nearest eighth 23 5/8 in = 600.075 mm, 0.075 mm off; 1/32 in gives the same.
    expect(formatLength(600, fraction(8))).toBe('≈23 5/8"');
    expect(formatLength(600.075 + 0.009, fraction(8))).toBe('23 5/8"');
    expect(formatLength(600.075 + 0.011, fraction(8))).toBe('≈23 5/8"');
    expect(formatLength(0.2, fraction(32))).toBe('≈0"');
  });

  it('prints decimal inches with at most three decimals', () => {
    expect(formatLength(600.075, DECIMAL)).toBe('23.625"');
    expect(formatLength(609.6, DECIMAL)).toBe('24"');
    expect(formatLength(600, DECIMAL)).toBe('23.622"');
  });

  it('says unknown for what is not known', () => {
    expect(formatLength(null, METRIC)).toBe('unknown');
  });

  it('refuses a denominator no rule has, and a length that is not finite', () => {
    expect(() => formatLength(1, fraction(0))).toThrow(RangeError);
    expect(() => formatLength(1, fraction(2.5))).toThrow(RangeError);
    expect(() => formatLength(1, fraction(256))).toThrow(RangeError);
    expect(() => formatLength(Number.NaN, METRIC)).toThrow(RangeError);
    expect(() => formatLength(Number.POSITIVE_INFINITY, fraction(8))).toThrow(RangeError);
  });

  it('prints what reads back as the same length to the printed precision, in every unit and style', () => {
    const formats: readonly (readonly [LengthFormat, number])[] = [
      // Half of the last printed step, mm.
      [METRIC, 0.05],
      [DECIMAL, 0.0005 * 25.4],
      ...[2, 4, 8, 16, 32].map((steps) => [fraction(steps), 25.4 / steps / 2] as const),
    ];
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 99_000, noNaN: true }),
        fc.constantFrom(...formats),
        fc.constantFrom<'metric' | 'us'>('metric', 'us'),
        (lengthMm, [format, precisionMm], project) => {
          const printed = formatLength(lengthMm, format);
          const reading = readLength(printed, project, { allowZero: true });
          if (!reading.ok) throw new Error(`${printed}: ${reading.message}`);
          expect(Math.abs(reading.mm - lengthMm)).toBeLessThanOrEqual(precisionMm + 1e-7);
          // What was printed is exact unless it is marked.
          if (format.units === 'us' && format.inchStyle === 'fraction')
            expect(printed.startsWith('≈')).toBe(Math.abs(reading.mm - lengthMm) > 0.01);
          expect(formatLength(reading.mm, format)).toBe(printed.replace('≈', ''));
        },
      ),
      { numRuns: 3000 },
    );
  });
});
