import { describe, expect, it } from 'vitest';
import { twoPartSplit } from '../../../server/planning/finish/two-part-split.ts';

describe('a two-part mix', () => {
  it('falls on base and hardener by volume', () => {
    const { baseL, hardenerL } = twoPartSplit({ litres: 1.2, mixBase: 2, mixHardener: 1 });
    expect(baseL).toBeCloseTo(0.8, 12); // 1.2 x 2 / 3
    expect(hardenerL).toBeCloseTo(0.4, 12); // 1.2 x 1 / 3
    expect(twoPartSplit({ litres: 0, mixBase: 10, mixHardener: 1 })).toEqual({ baseL: 0, hardenerL: 0 });
  });

  it('refuses a ratio without one of its sides', () => {
    expect(() => twoPartSplit({ litres: 1, mixBase: 2, mixHardener: 0 })).toThrow('mixHardener');
    expect(() => twoPartSplit({ litres: 1, mixBase: 0, mixHardener: 1 })).toThrow('mixBase');
  });
});
