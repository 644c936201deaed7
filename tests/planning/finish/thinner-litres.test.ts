import { describe, expect, it } from 'vitest';
import { thinnerLitres } from '../../../server/planning/finish/thinner-litres.ts';

describe('thinner', () => {
  it('follows its share of the liquid', () => {
    expect(thinnerLitres({ litres: 1.5, thinning: 0.1 })).toBeCloseTo(0.15, 12); // 1.5 x 0.1
    expect(thinnerLitres({ litres: 0, thinning: 0.1 })).toBe(0);
    expect(thinnerLitres({ litres: 1.5, thinning: 0 })).toBe(0);
  });

  it('refuses less than nothing', () => {
    expect(() => thinnerLitres({ litres: -1, thinning: 0 })).toThrow('litres');
    expect(() => thinnerLitres({ litres: 1, thinning: -0.1 })).toThrow('thinning');
  });
});
