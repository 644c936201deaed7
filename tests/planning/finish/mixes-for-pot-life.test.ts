import { describe, expect, it } from 'vitest';
import { mixesForPotLife } from '../../../server/planning/finish/mixes-for-pot-life.ts';

describe('the number of mixes', () => {
  it('grows by one just over the pot life, and not just under or at it', () => {
    expect(mixesForPotLife({ minutes: 29.99, potLifeMin: 30 })).toBe(1);
    expect(mixesForPotLife({ minutes: 30, potLifeMin: 30 })).toBe(1);
    expect(mixesForPotLife({ minutes: 30.01, potLifeMin: 30 })).toBe(2);
  });

  it('does not grow by floating-point dust', () => {
    expect((0.1 + 0.2) / 0.1).toBeGreaterThan(3); // 3.0000000000000004
    expect(mixesForPotLife({ minutes: 0.1 + 0.2, potLifeMin: 0.1 })).toBe(3);
  });

  it('is one for the smallest job and none for no job', () => {
    expect(mixesForPotLife({ minutes: 1e-12, potLifeMin: 30 })).toBe(1);
    expect(Object.is(mixesForPotLife({ minutes: 0, potLifeMin: 30 }), 0)).toBe(true);
  });

  it('refuses no pot life', () => {
    expect(() => mixesForPotLife({ minutes: 1, potLifeMin: 0 })).toThrow('potLifeMin');
  });
});
