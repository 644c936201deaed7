import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLengthMm } from '../../../client/format/read-length-mm.ts';
import { formatLength } from '../../../server/planning/display/format-length.ts';

const RANGE = { leastMm: 0, mostMm: 1000 };
const metric = (typed: string) => readLengthMm(typed, 'metric', RANGE);
const us = (typed: string) => readLengthMm(typed, 'us', RANGE);

describe('a typed length setting', () => {
  it('takes a bare number in the unit of the project', () => {
    expect(metric('25')).toEqual({ ok: true, value: 25 });
    // 1 in = 25.4 mm.
    expect(us('1')).toEqual({ ok: true, value: 25.4 });
  });

  it('takes a written unit over the unit of the project', () => {
    expect(metric('1 in')).toEqual({ ok: true, value: 25.4 });
    expect(us('2.5 cm')).toEqual({ ok: true, value: 25 });
    expect(us('25 mm')).toEqual({ ok: true, value: 25 });
    // 1 ft = 304.8 mm.
    expect(metric("1'")).toEqual({ ok: true, value: 304.8 });
  });

  it('takes fractions and mixed numbers, a hyphen being no minus', () => {
    // 1.5 x 25.4 = 38.1; 1/16 x 25.4 = 1.5875.
    expect(us('1 1/2')).toEqual({ ok: true, value: 38.1 });
    expect(us('1-1/2"')).toEqual({ ok: true, value: 38.1 });
    expect(us('1/16')).toEqual({ ok: true, value: 1.5875 });
    expect(us('\u215b')).toMatchObject({ ok: false });
  });

  it('takes back what the program prints, approximate mark included', () => {
    const format = { units: 'us', inchStyle: 'fraction', inchDenominator: 32 } as const;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1200 }), (thirtySeconds) => {
        const mm = (thirtySeconds / 32) * 25.4;
        const reading = us(formatLength(mm, format));
        expect(reading.ok && Math.abs(reading.value - mm)).toBeLessThan(1e-6);
      }),
    );
    expect(us('≈1"')).toEqual({ ok: true, value: 25.4 });
  });

  it('refuses what it does not understand and what could mean two things', () => {
    for (const typed of ['', 'wide', '1,220', '3/0', '2 4', '-5', '5 parsec'])
      expect(metric(typed)).toMatchObject({ ok: false });
  });

  it('holds its range with both ends', () => {
    expect(metric('0')).toEqual({ ok: true, value: 0 });
    expect(metric('1000')).toEqual({ ok: true, value: 1000 });
    expect(metric('1000.1')).toMatchObject({ ok: false });
  });
});
