import { describe, expect, it } from 'vitest';
import { emissionPhases } from '../../../server/planning/air/emission-phases.ts';

describe('emissionPhases', () => {
  it('gives its worked example', () => {
    // ln 20 / 60 = 2.995732 / 60 = 0.0499289 per minute.
    const [phase, ...others] = emissionPhases({ kind: 'touch-dry', touchDryMin: 60 }, 5000);
    expect(others).toEqual([]);
    expect(phase?.amount).toBe(5000);
    expect(phase?.decayPerMin).toBeCloseTo(0.0499289, 7);
  });

  it('has 95 percent off by touch dry', () => {
    const [phase] = emissionPhases({ kind: 'touch-dry', touchDryMin: 240 }, 1);
    expect(1 - Math.exp(-(phase?.decayPerMin ?? 0) * 240)).toBeCloseTo(0.95, 12);
  });

  it('splits the amount over two known phases', () => {
    const phases = [
      { share: 0.9, decayPerMin: 0.05 },
      { share: 0.1, decayPerMin: 0.001 },
    ];
    expect(emissionPhases({ kind: 'phases', phases }, 200)).toEqual([
      { amount: 180, decayPerMin: 0.05 },
      { amount: 20, decayPerMin: 0.001 },
    ]);
  });

  it('has everything off within half a minute where nothing is known', () => {
    const [phase] = emissionPhases({ kind: 'all-at-once' }, 1);
    expect(Math.exp(-(phase?.decayPerMin ?? 0) * 0.5)).toBeLessThan(0.01);
  });

  it.each([
    [{ kind: 'touch-dry', touchDryMin: 0 }, 1],
    [{ kind: 'touch-dry', touchDryMin: Number.NaN }, 1],
    [{ kind: 'touch-dry', touchDryMin: 60 }, -1],
    [{ kind: 'phases', phases: [] }, 1],
    [{ kind: 'phases', phases: [{ share: 0.9, decayPerMin: 0.1 }] }, 1],
    [{ kind: 'phases', phases: Array(3).fill({ share: 1 / 3, decayPerMin: 0.1 }) }, 1],
  ] as const)('refuses %o', (emission, amount) => {
    expect(() => emissionPhases(emission, amount)).toThrow(RangeError);
  });
});
