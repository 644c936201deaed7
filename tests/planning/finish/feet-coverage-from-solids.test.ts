import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageFromSolids } from '../../../server/planning/finish/coverage-from-solids.ts';
import { feetCoverageFromSolids } from '../../../server/planning/finish/feet-coverage-from-solids.ts';

describe('coverage in US units', () => {
  it('agrees with the metric rule but for the rounding of 1604', () => {
    // 1 ft2/gal = 0.09290304 m2 / 3.785411784 L, exact by definition of foot and gallon; 1604 / 1604.167 = 0.99990
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        (solidsPercent, dryFilmMil) => {
          const feet = feetCoverageFromSolids({ solidsPercent, dryFilmMil });
          const metric = coverageFromSolids({ solidsPercent, dryFilmUm: dryFilmMil * 25.4 });
          expect((feet * 0.09290304) / 3.785411784 / metric).toBeCloseTo(0.9999, 5);
        },
      ),
    );
  });

  it('refuses what is out of range', () => {
    expect(() => feetCoverageFromSolids({ solidsPercent: 101, dryFilmMil: 1 })).toThrow('solidsPercent');
    expect(() => feetCoverageFromSolids({ solidsPercent: 35, dryFilmMil: 0 })).toThrow('dryFilmMil');
  });
});
