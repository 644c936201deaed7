import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageFromSolids } from '../../../server/planning/finish/coverage-from-solids.ts';
import { wetFilmFromDry } from '../../../server/planning/finish/wet-film-from-dry.ts';

describe('wet film', () => {
  it('dries to the film asked for', () => {
    // 28 / 0.35 = 80; thinned by a tenth there is a tenth more to evaporate: 88
    expect(wetFilmFromDry({ dryFilmUm: 28, solidsPercent: 35, thinning: 0 })).toBeCloseTo(80, 12);
    expect(wetFilmFromDry({ dryFilmUm: 28, solidsPercent: 35, thinning: 0.1 })).toBeCloseTo(88, 12);
  });

  it('is a litre over the area it covers', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 5, max: 500, noNaN: true }),
        (solidsPercent, dryFilmUm) => {
          const wetUm = wetFilmFromDry({ dryFilmUm, solidsPercent, thinning: 0 });
          // 1 L spread at wetUm covers 1000 / wetUm square metres, by geometry
          expect(coverageFromSolids({ solidsPercent, dryFilmUm }) * wetUm).toBeCloseTo(1000, 6);
        },
      ),
    );
  });

  it('refuses what is out of range', () => {
    expect(() => wetFilmFromDry({ dryFilmUm: 0, solidsPercent: 35, thinning: 0 })).toThrow('dryFilmUm');
    expect(() => wetFilmFromDry({ dryFilmUm: 28, solidsPercent: 0, thinning: 0 })).toThrow('solidsPercent');
    expect(() => wetFilmFromDry({ dryFilmUm: 28, solidsPercent: 35, thinning: -1 })).toThrow('thinning');
  });
});
