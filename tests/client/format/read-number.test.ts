import { describe, expect, it } from 'vitest';
import { readNumber, readOptionalNumber } from '../../../client/format/read-number.ts';
import { readShare } from '../../../client/format/read-share.ts';

describe('a typed number', () => {
  it('takes point and comma as the decimal mark', () => {
    expect(readNumber('2')).toEqual({ ok: true, value: 2 });
    expect(readNumber(' 1.5 ')).toEqual({ ok: true, value: 1.5 });
    expect(readNumber('1,5')).toEqual({ ok: true, value: 1.5 });
    expect(readNumber('.25')).toEqual({ ok: true, value: 0.25 });
    expect(readNumber('20\u202f480')).toEqual({ ok: true, value: 20480 });
  });

  it('refuses what could mean two things', () => {
    expect(readNumber('1,220')).toMatchObject({ ok: false });
    // Two or four digits behind the comma can only be decimals.
    expect(readNumber('1,22')).toEqual({ ok: true, value: 1.22 });
    expect(readNumber('1,2205')).toEqual({ ok: true, value: 1.2205 });
  });

  it('refuses what is no number, and says what was typed', () => {
    for (const typed of ['', 'two', '1.5.2', '3 coats', '1e3', 'NaN', '--1'])
      expect(readNumber(typed)).toMatchObject({ ok: false, message: expect.stringContaining(`"${typed}"`) });
  });

  it('holds a range with both its ends', () => {
    const range = { least: 1, most: 20, whole: true };
    expect(readNumber('1', range)).toEqual({ ok: true, value: 1 });
    expect(readNumber('20', range)).toEqual({ ok: true, value: 20 });
    expect(readNumber('0', range)).toMatchObject({ ok: false });
    expect(readNumber('21', range)).toMatchObject({ ok: false });
    expect(readNumber('2.5', range)).toMatchObject({ ok: false });
  });

  it('is null when nothing is typed and that may be', () => {
    expect(readOptionalNumber('  ')).toEqual({ ok: true, value: null });
    expect(readOptionalNumber('0')).toEqual({ ok: true, value: 0 });
  });
});

describe('a typed share', () => {
  it('is percent, with or without the sign', () => {
    expect(readShare('10')).toEqual({ ok: true, value: 0.1 });
    expect(readShare('65 %')).toEqual({ ok: true, value: 0.65 });
    // 7 / 100 is 0.07 exactly as written, not 0.07000000000000001.
    expect(readShare('7%')).toEqual({ ok: true, value: 0.07 });
  });

  it('is refused outside its range', () => {
    expect(readShare('101', { most: 100 })).toMatchObject({ ok: false });
  });
});
