import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blendSplit } from '../../../server/planning/finish/blend-split.ts';

describe('a blend', () => {
  it('falls on its components by their parts', () => {
    const [two, one] = blendSplit({ litres: 0.9, parts: [2, 1] });
    expect(two).toBeCloseTo(0.6, 12); // 0.9 x 2 / 3
    expect(one).toBeCloseTo(0.3, 12); // 0.9 x 1 / 3
  });

  it('loses nothing in the split', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.array(fc.double({ min: 0.001, max: 100, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (litres, parts) => {
          const sum = blendSplit({ litres, parts }).reduce((total, share) => total + share, 0);
          expect(sum).toBeCloseTo(litres, 9);
        },
      ),
    );
  });

  it('refuses to be split by no parts at all', () => {
    expect(() => blendSplit({ litres: 1, parts: [0, 0] })).toThrow('sum of parts');
    expect(() => blendSplit({ litres: 1, parts: [] })).toThrow('sum of parts');
    expect(() => blendSplit({ litres: -1, parts: [1] })).toThrow('litres');
  });
});
