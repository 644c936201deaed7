import { describe, expect, it } from 'vitest';
import { coverageFromSolids } from '../../../server/planning/finish/coverage-from-solids.ts';

describe('coverage from solids and film', () => {
  it('is ten times the solids in percent over the dry film', () => {
    expect(coverageFromSolids({ solidsPercent: 35, dryFilmUm: 28 })).toBe(12.5); // 10 x 35 / 28
    expect(coverageFromSolids({ solidsPercent: 100, dryFilmUm: 1 })).toBe(1000); // a litre of solids at 1 um
  });

  it('halves when the film doubles', () => {
    expect(coverageFromSolids({ solidsPercent: 40, dryFilmUm: 50 })).toBe(8);
    expect(coverageFromSolids({ solidsPercent: 40, dryFilmUm: 100 })).toBe(4);
  });

  it.each([0, -5, 100.1, Number.NaN])('refuses %s percent of solids', (solidsPercent) => {
    expect(() => coverageFromSolids({ solidsPercent, dryFilmUm: 25 })).toThrow('solidsPercent');
  });

  it('refuses no film', () => {
    expect(() => coverageFromSolids({ solidsPercent: 35, dryFilmUm: 0 })).toThrow('dryFilmUm');
  });
});
