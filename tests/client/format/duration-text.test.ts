import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { durationText } from '../../../client/format/duration-text.ts';
import { readDuration } from '../../../client/format/read-duration.ts';

describe('a time', () => {
  it('is printed as people say it', () => {
    expect(durationText(0)).toBe('0 min');
    expect(durationText(45)).toBe('45 min');
    expect(durationText(59.5)).toBe('59.5 min');
    expect(durationText(60)).toBe('1 h');
    expect(durationText(150)).toBe('2 h 30 min');
    // Label times of 24 to 71 hours stay in hours; three days and more are days.
    expect(durationText(2160)).toBe('36 h');
    expect(durationText(4320)).toBe('3 d');
    expect(durationText(35_280)).toBe('24 d 12 h');
  });

  it('is read with its unit', () => {
    expect(readDuration('30 min')).toEqual({ ok: true, value: 30 });
    expect(readDuration('1,5 h')).toEqual({ ok: true, value: 90 });
    expect(readDuration('1 h 30 min')).toEqual({ ok: true, value: 90 });
    expect(readDuration('3 days')).toEqual({ ok: true, value: 4320 });
    expect(readDuration(' ')).toEqual({ ok: true, value: null });
  });

  it('is refused without a unit, with an unknown one, and with anything left over', () => {
    for (const typed of ['2', '2 weeks', 'soon', '2 h later', '-1 h', '1 h,'])
      expect(readDuration(typed)).toMatchObject({ ok: false });
  });

  it('reads back what it prints, for whole minutes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200_000 }), (minutes) => {
        expect(readDuration(durationText(minutes))).toEqual({ ok: true, value: minutes });
      }),
    );
  });
});
