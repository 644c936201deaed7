import { describe, expect, it } from 'vitest';
import { sumFigure } from '../../../server/planning/finish/sum-figure.ts';

const sum = (values: readonly (number | null)[]) =>
  sumFigure({
    rule: 'sum',
    unit: 'm2',
    noun: 'rows',
    summands: values.map((value, index) => ({ name: `row ${index + 1}`, value })),
  });

describe('a sum of figures', () => {
  it('adds what is known and says what is left out', () => {
    expect(sum([2, null, 3]).value).toBe(5);
    expect(sum([2, null, 3]).working.notes).toEqual(['1 of 3 rows is unknown and left out of the sum.']);
    expect(sum([2, null, null]).working.notes).toEqual(['2 of 3 rows are unknown and left out of the sum.']);
  });

  it('is 0 for no rows, and unknown when no row is known', () => {
    expect(sum([]).value).toBe(0);
    expect(sum([null, null]).value).toBeNull();
  });

  it('names every row of a short list, and the largest of a long one', () => {
    expect(sum(Array.from({ length: 24 }, () => 1)).working.inputs).toHaveLength(24);
    const long = sum(Array.from({ length: 30 }, (_, index) => index + 1));
    expect(long.value).toBe(465); // 30 x 31 / 2
    expect(long.working.inputs).toHaveLength(24);
    expect(long.working.inputs[0]).toEqual({ name: 'row 30', value: 30, unit: 'm2' });
    // 23 rows are named, 30 down to 8; the other 7 are 1 + 2 + ... + 7 = 28
    expect(long.working.inputs.map(({ value }) => value).slice(0, 23)).toEqual(
      Array.from({ length: 23 }, (_, index) => 30 - index),
    );
    expect(long.working.inputs.at(-1)).toEqual({ name: 'the other 7 rows together', value: 28, unit: 'm2' });
  });

  it('names the unknown rows of a long list before the known ones', () => {
    const long = sum([...Array.from({ length: 40 }, () => 1), null, null]);
    expect(long.working.inputs.slice(0, 3).map(({ name }) => name)).toEqual(['row 41', 'row 42', 'row 1']);
    expect(long.working.inputs.at(-1)?.value).toBe(19); // 42 rows, 23 named, 2 of them unknown: 40 - 21
  });
});
