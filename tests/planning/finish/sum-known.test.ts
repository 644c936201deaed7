import { describe, expect, it } from 'vitest';
import { sumKnown } from '../../../server/planning/finish/sum-known.ts';

const sum = (...values: readonly (number | null)[]) =>
  sumKnown(
    values.map((value) => ({ value })),
    'rows',
  );

describe('a sum of what is known', () => {
  it('leaves unknown numbers out and says how many', () => {
    expect(sum(2, null, 3)).toEqual({
      value: 5,
      notes: ['1 of 3 rows is unknown and left out of the sum.'],
    });
    expect(sum(2, 3)).toEqual({ value: 5, notes: [] });
  });

  it('is unknown when all are, and 0 of nothing', () => {
    expect(sum(null, null).value).toBeNull();
    expect(sum().value).toBe(0);
  });
});
