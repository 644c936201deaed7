import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stableHash } from '../../../../server/planning/cutting/found/stable-hash.ts';

describe('stableHash', () => {
  it('is FNV-1a in its first half', () => {
    // Published test vectors of FNV-1a, 32 bits: "" 811c9dc5, "a" e40c292c, "foobar" bf9cf968.
    expect(stableHash('').slice(0, 8)).toBe('811c9dc5');
    expect(stableHash('a').slice(0, 8)).toBe('e40c292c');
    expect(stableHash('foobar').slice(0, 8)).toBe('bf9cf968');
  });

  it('is 16 digits, the same each time, and told apart by one character', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (left, right) => {
        expect(stableHash(left)).toMatch(/^[0-9a-f]{16}$/);
        expect(stableHash(left) === stableHash(right)).toBe(left === right);
      }),
    );
    const many = new Set(Array.from({ length: 100_000 }, (_, number) => stableHash(`1;3;${number};600,400`)));
    expect(many.size).toBe(100_000);
  });
});
