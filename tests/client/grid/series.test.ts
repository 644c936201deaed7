import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seriesOf } from '../../../client/grid/series.ts';

const run = (texts: string[], places: number[], alone = false): (string | null)[] | null => {
  const series = seriesOf(texts, alone);
  return series === null ? null : places.map(series);
};

describe('a series', () => {
  it('of two names counts on by their step, in both directions', () => {
    expect(run(['Shelf 1', 'Shelf 2'], [2, 3])).toEqual(['Shelf 3', 'Shelf 4']);
    expect(run(['Door 10 left', 'Door 8 left'], [2, 3, -1])).toEqual([
      'Door 6 left',
      'Door 4 left',
      'Door 12 left',
    ]);
  });

  it('of one text counts by ones only when that is asked for', () => {
    expect(run(['Shelf 1'], [1, 2])).toBeNull();
    expect(run(['Shelf 1'], [1, 2], true)).toEqual(['Shelf 2', 'Shelf 3']);
    expect(run(['Shelf'], [1], true)).toBeNull();
  });

  it('counts the last number of a text, and keeps what stands around it', () => {
    expect(run(['2 Rail A9/b'], [1, 2], true)).toEqual(['2 Rail A10/b', '2 Rail A11/b']);
    expect(run(['300 mm', '350 mm'], [2])).toEqual(['400 mm']);
  });

  it('keeps leading zeros and decimals as they are written', () => {
    expect(run(['P08', 'P09'], [2, 93])).toEqual(['P10', 'P101']);
    // 12.5, 13.0, 13.5: one decimal stays; 0.1 + 0.2 written out exactly is 0.3.
    expect(run(['12.5', '13.0'], [2, 3])).toEqual(['13.5', '14.0']);
    expect(run(['0.1', '0.2'], [2])).toEqual(['0.3']);
    expect(run(['1,25', '1,50'], [2])).toEqual(['1,75']);
  });

  it('goes on in exact fractions of an inch', () => {
    // 5 1/8 + 1/4 = 5 3/8, 5 5/8, 5 7/8, 6 1/8.
    expect(run(['5 1/8"', '5 3/8"'], [2, 3, 4])).toEqual(['5 5/8"', '5 7/8"', '6 1/8"']);
    // 23 1/2 and 24: a half a time.
    expect(run(['23 1/2', '24'], [2, 3])).toEqual(['24 1/2', '25']);
    expect(run(['1/4', '1/2'], [2, 3])).toEqual(['3/4', '1']);
    // Thirds and quarters meet in twelfths: 1/3, 7/12, 10/12 = 5/6.
    expect(run(['1/3', '7/12'], [2])).toEqual(['5/6']);
  });

  it('is none when the texts differ, the steps differ, or nothing changes', () => {
    expect(run(['Shelf 1', 'Door 2'], [2])).toBeNull();
    expect(run(['600 mm', '650'], [2])).toBeNull();
    expect(run(['1', '2', '4'], [3])).toBeNull();
    expect(run(['7', '7'], [2])).toBeNull();
    expect(run(['', ''], [2])).toBeNull();
    expect(run(['1', ''], [2])).toBeNull();
  });

  it('leaves sums, feet and inches, and order codes alone', () => {
    expect(run(['=a + 1', '=a + 2'], [2])).toBeNull();
    expect(run([`2'-6"`, `2'-7"`], [2])).toBeNull();
    expect(run(['1234567890123', '1234567890124'], [2])).toBeNull();
    expect(run(['1/0'], [1], true)).toBeNull();
  });

  it('ends at zero', () => {
    expect(run(['2', '1'], [2, 3])).toEqual(['0', null]);
    expect(run(['Shelf 1'], [-1, -2], true)).toEqual(['Shelf 0', null]);
  });

  it('passes through the texts it was made from', () => {
    const decimal = fc.record({ start: fc.nat(5000), step: fc.integer({ min: 1, max: 400 }) });
    fc.assert(
      fc.property(decimal, fc.integer({ min: 2, max: 6 }), ({ start, step }, length) => {
        const texts = Array.from({ length }, (_, place) => `Part ${start + place * step}`);
        const series = seriesOf(texts, false);
        expect(texts.map((_, place) => series?.(place))).toEqual(texts);
        expect(series?.(length)).toBe(`Part ${start + length * step}`);
      }),
    );
  });
});
