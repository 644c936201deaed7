import { describe, expect, it } from 'vitest';
import { leastCostMix } from '../../../server/planning/packs/least-cost-mix.ts';

const FREE = { mostStates: 1000, freeBasePacks: Number.POSITIVE_INFINITY };

describe('the mix on whole grid steps', () => {
  it('covers the target at least cost', () => {
    // 7 steps of 5 at 4 and 3 at 3: 5 + 3 costs 7, 3 + 3 + 3 costs 9, 5 + 5 costs 8
    const packs = [
      { size: 5, cost: 4 },
      { size: 3, cost: 3 },
    ];
    expect(leastCostMix({ target: 7, packs, ...FREE })).toEqual({ counts: [1, 1], complete: true });
  });

  it('keeps a small mix beside a larger, cheaper one of the same residue', () => {
    // 14 steps, base 10 at 20: 3 at 10 and 13 at 28 share the residue 3, and 13 is the cheaper by the step. Yet 3 + 11
    // costs 33; 13 + 3 costs 38, and 10 + 10 costs 40.
    const packs = [
      { size: 10, cost: 20 },
      { size: 3, cost: 10 },
      { size: 13, cost: 28 },
      { size: 11, cost: 23 },
    ];
    expect(leastCostMix({ target: 14, packs, ...FREE })).toEqual({ counts: [0, 1, 0, 1], complete: true });
  });

  it('keeps the larger of two mixes of one residue and cost when it is fewer packs', () => {
    // 36 steps: 31 + 5 costs 38 in two packs; 30 + 1 + 5 costs 38 in three
    const packs = [
      { size: 30, cost: 30 },
      { size: 1, cost: 2 },
      { size: 31, cost: 32 },
      { size: 5, cost: 6 },
    ];
    expect(leastCostMix({ target: 36, packs, ...FREE })).toEqual({ counts: [0, 0, 1, 1], complete: true });
  });

  it('takes whole base packs for a target far beyond any table', () => {
    // 3,000,000,007 steps: 600,000,001 packs of 5 leave 2 steps, covered by one pack of 3
    const packs = [
      { size: 5, cost: 4 },
      { size: 3, cost: 3 },
    ];
    expect(leastCostMix({ target: 3_000_000_007, packs, ...FREE })).toEqual({
      counts: [600_000_001, 1],
      complete: true,
    });
  });

  it('says when it ran out of its allowance, and still covers the target', () => {
    const packs = [101, 103, 107, 109].map((size) => ({ size, cost: size }));
    const { counts, complete } = leastCostMix({
      target: 100_000,
      packs,
      mostStates: 50,
      freeBasePacks: Number.POSITIVE_INFINITY,
    });
    expect(complete).toBe(false);
    expect(
      packs.reduce((sum, { size }, index) => sum + size * (counts[index] ?? 0), 0),
    ).toBeGreaterThanOrEqual(100_000);
  });

  it('searches only the end of the target when base packs are taken beforehand', () => {
    const packs = [
      { size: 10, cost: 10 },
      { size: 7, cost: 8 },
    ];
    // 104 steps, two base packs' worth free: 9 of 10 are taken, the last 14 are two of 7 at 16, or two of 10 at 20
    expect(leastCostMix({ target: 104, packs, mostStates: 1000, freeBasePacks: 2 }).counts).toEqual([9, 2]);
  });

  it.each([
    [{ target: 0 }, 'target'],
    [{ target: 1.5 }, 'target'],
    [{ packs: [] }, 'packs'],
    [{ packs: [{ size: 0, cost: 1 }] }, 'size'],
    [{ packs: [{ size: 1, cost: -1 }] }, 'cost'],
    [{ packs: [{ size: 1, cost: 0.5 }] }, 'cost'],
    [{ freeBasePacks: 0 }, 'freeBasePacks'],
  ])('refuses %j', (wrong, name) => {
    const right = { target: 5, packs: [{ size: 1, cost: 1 }], ...FREE };
    expect(() => leastCostMix({ ...right, ...wrong })).toThrow(name);
  });
});
