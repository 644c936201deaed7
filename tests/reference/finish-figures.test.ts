import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import {
  L_PER_US_GALLON,
  M2_PER_FT2,
  MM_PER_FOOT,
  MM_PER_INCH,
} from '../../server/planning/display/constants.ts';
import type { ProductFigureName } from '../../server/planning/product.ts';

/** Finish figures in the catalogue against the sources they name, and the conversions they were entered through. */

const products = new Map(readCatalogue().products.map((product) => [product.id, product]));

function figure(id: string, name: ProductFigureName): (number | null)[] {
  const found = products.get(id)?.figures[name];
  if (found === undefined) throw new RangeError(`"${id}" has no ${name}`);
  return [found.low, found.typical, found.high];
}

const m2PerLitre = (ft2PerGallon: number): number => (ft2PerGallon * M2_PER_FT2) / L_PER_US_GALLON;

describe('unit conversions', () => {
  it('hold the exact values of the international yard and pound agreement and the US gallon', () => {
    expect([MM_PER_INCH, MM_PER_FOOT]).toEqual([25.4, 304.8]);
    expect(M2_PER_FT2).toBeCloseTo(0.3048 ** 2, 15);
    // 231 cubic inches: 231 x 2.54^3 / 1000
    expect(L_PER_US_GALLON).toBeCloseTo((231 * 2.54 ** 3) / 1000, 12);
  });

  // Wood Handbook, FPL-GTR-190, ch. 16, prints 200-400 ft2/gal as 4.9-9.8 m2/L and 100-200 as 2.4-4.9 (to a tenth).
  it.each([
    [100, 2.4542],
    [200, 4.9085],
    [400, 9.817],
  ])('turn %d ft2/gal into %d m2/L', (ft2PerGallon, expected) => {
    expect(m2PerLitre(ft2PerGallon)).toBeCloseTo(expected, 4);
  });

  it('turn 350 to 450 ft2/gal into the 8.6 to 11.0 m2/L of a floor-polyurethane sheet', () => {
    expect(m2PerLitre(350)).toBeCloseTo(8.6, 1);
    expect(m2PerLitre(450)).toBeCloseTo(11.0, 1);
  });
});

describe('catalogue finishes', () => {
  it.each(['oil-stain-honey', 'oil-stain-walnut', 'oil-stain-black', 'oil-stain-cherry'])(
    '%s covers what the Wood Handbook gives for smooth wood',
    (id) => {
      const [low, typical, high] = figure(id, 'coverage');
      expect(low).toBeCloseTo(m2PerLitre(200), 3);
      expect(high).toBeCloseTo(m2PerLitre(400), 3);
      expect(typical).toBeCloseTo(m2PerLitre(300), 3);
      expect(products.get(id)?.figures.coverage?.source).toMatch(/Wood Handbook, FPL-GTR-190, ch. 16/);
    },
  );

  it.each(['oil-poly-satin', 'oil-poly-gloss'])('%s covers 350 to 450 ft2/gal', (id) => {
    const [low, , high] = figure(id, 'coverage');
    expect(low).toBeCloseTo(m2PerLitre(350), 3);
    expect(high).toBeCloseTo(m2PerLitre(450), 3);
  });

  it('water-based polyurethane covers 80 to 96 % of what its solids and film allow', () => {
    // data sheet of a water-based coating: 80 um wet at 35 % is 28 um dry; 10 x 35 / 28 = 12.5 m2/L in theory
    const [low, , high] = figure('water-poly-satin', 'coverage');
    const [, solids] = figure('water-poly-satin', 'solidsByVolume');
    const [, dryFilmUm] = figure('water-poly-satin', 'dryFilm');
    const theory = (10 * (solids ?? 0)) / (dryFilmUm ?? 1);
    expect(theory).toBeCloseTo(12.5, 10);
    expect((low ?? 0) / theory).toBeCloseTo(0.8, 10);
    expect((high ?? 0) / theory).toBeCloseTo(0.96, 10);
  });

  it('cure times keep the range of their sources instead of one number', () => {
    // water-based: 2 to 5 days, about 7, about 20 days; oil-based: 3 to 4 weeks. Minutes: days x 1440.
    expect(figure('water-poly-satin', 'cure')).toEqual([2 * 1440, 7 * 1440, 20 * 1440]);
    expect(figure('oil-poly-satin', 'cure')).toEqual([21 * 1440, 24.5 * 1440, 28 * 1440]);
  });

  it('conditioner is wiped off within 15 min and stained within 2 h', () => {
    // hunker.com, What does wood conditioner do
    expect(figure('conditioner-oil', 'workingTime')).toEqual([null, 15, null]);
    expect(products.get('conditioner-oil')?.recoat.at(-1)?.toMin).toBe(120);
  });

  it('solvents have the flash points of the NIOSH Pocket Guide', () => {
    // ethanol 55 F, isopropyl alcohol 53 F: (F - 32) / 1.8
    expect(figure('denatured-alcohol', 'flashPoint')[1]).toBeCloseTo((55 - 32) / 1.8, 1);
    expect(figure('isopropanol', 'flashPoint')[1]).toBeCloseTo((53 - 32) / 1.8, 1);
    expect(figure('denatured-alcohol', 'density')).toEqual([null, 790, null]);
  });

  it('nothing evaporates in a greater mass than the liquid has', () => {
    const impossible = [...products.values()].filter(({ figures }) => {
      const { voc, density } = figures;
      return voc?.typical != null && density?.typical != null && voc.typical > density.typical;
    });
    expect(impossible.map(({ id }) => id)).toEqual([]);
  });
});
