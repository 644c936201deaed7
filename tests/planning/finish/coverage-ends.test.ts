import { describe, expect, it } from 'vitest';
import { coverageEnds } from '../../../server/planning/finish/coverage-ends.ts';
import { aProduct } from './sample-project.ts';

const ends = (...args: Parameters<typeof aProduct>): readonly (number | null)[] => {
  const { low, typical, high } = coverageEnds(aProduct(...args));
  return [low.value, typical.value, high.value];
};

describe('the ends of a coverage range', () => {
  it('are the ones of the catalogue, each with its evidence in words', () => {
    expect(ends('varnish', 'finish', { coverage: [8, 10, 12] })).toEqual([8, 10, 12]);
    const { low } = coverageEnds(aProduct('varnish', 'finish', { coverage: [8, 10, 12] }));
    expect(low).toEqual({ value: 8, source: 'label value, typical of the family', notes: [] });
  });

  it('take the typical value for a missing end, and say so', () => {
    const { low, high } = coverageEnds(aProduct('varnish', 'finish', { coverage: 10 }));
    expect([low.value, high.value]).toEqual([10, 10]);
    expect(low.notes).toEqual(['No low coverage is known; the typical one stands in for it.']);
    expect(high.notes).toEqual(['No high coverage is known; the typical one stands in for it.']);
  });

  it('are reckoned from solids and dry film when no coverage is stated', () => {
    // 10 x 35 / 28 = 12.5 m2/L; in US units 1604 x 0.35 / (28 / 25.4) = 509 ft2/gal
    const product = aProduct('varnish', 'finish', { solidsByVolume: 35, dryFilm: 28 });
    const { low, typical, high } = coverageEnds(product);
    expect([low.value, typical.value, high.value]).toEqual([12.5, 12.5, 12.5]);
    expect(typical.source).toContain('35 % solids');
    expect(typical.notes.join()).toContain('509 ft2/gal');
  });

  it('fill a missing typical value from solids only where that lies within the stated ends', () => {
    const film = { solidsByVolume: 35, dryFilm: 28 };
    expect(ends('a', 'finish', { coverage: [10, null, 14], ...film })).toEqual([10, 12.5, 14]);
    expect(ends('b', 'finish', { coverage: [7, null, 9], ...film })).toEqual([7, 7, 9]);
  });

  it('let the one end that is known stand for all, and say so', () => {
    expect(ends('a', 'finish', { coverage: [7, null, null] })).toEqual([7, 7, 7]);
    expect(ends('a', 'finish', { coverage: [null, null, 9] })).toEqual([9, 9, 9]);
    const { typical } = coverageEnds(aProduct('a', 'finish', { coverage: [null, null, 9] }));
    expect(typical.notes).toEqual(['Only the high coverage is known; it stands in for the typical one.']);
  });

  it('are unknown, never 0, when nothing usable is known', () => {
    expect(ends('a', 'finish')).toEqual([null, null, null]);
    expect(ends('a', 'finish', { coverage: 0 })).toEqual([null, null, null]);
    expect(ends('a', 'finish', { solidsByVolume: 35 })).toEqual([null, null, null]);
    expect(ends('a', 'finish', { solidsByVolume: 120, dryFilm: 28 })).toEqual([null, null, null]);
  });
});
