import { describe, expect, it } from 'vitest';
import { isPositive } from '../../../server/planning/finish/is-positive.ts';

describe('a known figure', () => {
  it('is a number above 0 that a catalogue can mean', () => {
    expect([12, 1e-6, 1e9].every((value) => isPositive(value))).toBe(true);
    const unknown = [null, undefined, 0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e-7, 1e10];
    expect(unknown.some((value) => isPositive(value))).toBe(false);
  });
});
