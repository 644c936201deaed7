import { describe, expect, it } from 'vitest';
import { blendCoverage } from '../../../server/planning/finish/blend-coverage.ts';
import { coverageFromSolids } from '../../../server/planning/finish/coverage-from-solids.ts';

describe('coverage of a blend', () => {
  it('is the volume-weighted mean of its components', () => {
    // (3 x 10 + 1 x 14) / 4 = 11
    expect(
      blendCoverage([
        { parts: 3, coverageM2PerL: 10 },
        { parts: 1, coverageM2PerL: 14 },
      ]),
    ).toBe(11);
  });

  it('is what the solids of the mix say, for coverage is proportional to solids', () => {
    // 2 parts at 20 % and 3 parts at 40 %: the mix holds (2 x 20 + 3 x 40) / 5 = 32 %
    const at = (solidsPercent: number): number => coverageFromSolids({ solidsPercent, dryFilmUm: 25 });
    expect(
      blendCoverage([
        { parts: 2, coverageM2PerL: at(20) },
        { parts: 3, coverageM2PerL: at(40) },
      ]),
    ).toBeCloseTo(at(32), 12);
  });

  it('is unknown as soon as one component is, unless none of that is in it', () => {
    const known = { parts: 3, coverageM2PerL: 10 };
    expect(blendCoverage([known, { parts: 1, coverageM2PerL: null }])).toBeNull();
    expect(blendCoverage([known, { parts: 0, coverageM2PerL: null }])).toBe(10);
  });

  it('refuses parts below 0 and no parts at all', () => {
    expect(() => blendCoverage([{ parts: -1, coverageM2PerL: 10 }])).toThrow('parts');
    expect(() => blendCoverage([{ parts: 0, coverageM2PerL: 10 }])).toThrow('sum of parts');
    expect(() => blendCoverage([{ parts: 1, coverageM2PerL: 0 }])).toThrow('coverageM2PerL');
  });
});
