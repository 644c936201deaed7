import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import type { Product } from '../../server/planning/product.ts';

/**
 * Board sizes in the catalogue against PS 20, minimum dressed sizes, dry (19 % moisture or less), as tabulated by
 * engineeringtoolbox.com (softwood lumber sizes) and, for thickness, by sizes.com citing PS 20-05.
 */

const products = new Map(readCatalogue().products.map((product) => [product.id, product]));
const INCH = 25.4;
/** The catalogue keeps four decimals of a millimetre. */
const DECIMALS = 4;

function board(id: string): Product {
  const found = products.get(id);
  if (found === undefined) throw new RangeError(`no board "${id}" is shipped`);
  return found;
}

/** Nominal name -> dry thickness and width, inches, as printed in the table. */
const PS_20: readonly (readonly [string, number, number])[] = [
  ['1x2', 3 / 4, 1 + 1 / 2],
  ['1x3', 3 / 4, 2 + 1 / 2],
  ['1x4', 3 / 4, 3 + 1 / 2],
  ['1x6', 3 / 4, 5 + 1 / 2],
  ['1x8', 3 / 4, 7 + 1 / 4],
  ['1x10', 3 / 4, 9 + 1 / 4],
  ['1x12', 3 / 4, 11 + 1 / 4],
  ['2x2', 1 + 1 / 2, 1 + 1 / 2],
  ['2x3', 1 + 1 / 2, 2 + 1 / 2],
  ['2x4', 1 + 1 / 2, 3 + 1 / 2],
  ['2x6', 1 + 1 / 2, 5 + 1 / 2],
];

describe('softwood boards', () => {
  it.each(PS_20)('%s has the dressed size of PS 20', (nominal, thicknessIn, widthIn) => {
    const { figures, choices } = board(`softwood-${nominal}`);
    expect(choices.nominal).toBe(nominal);
    expect(figures.thicknessActual?.typical).toBeCloseTo(thicknessIn * INCH, DECIMALS);
    expect(figures.width?.typical).toBeCloseTo(widthIn * INCH, DECIMALS);
    for (const figure of [figures.thicknessActual, figures.width]) {
      expect(figure?.basis).toBe('published');
      expect(figure?.source).toMatch(/PS 20/);
    }
  });

  // derived by hand: 3/4 = 19.05; 1-1/2 = 38.1; 3-1/2 = 88.9; 5-1/2 = 139.7 mm
  it.each([
    ['softwood-1x2', 19.05, 38.1],
    ['softwood-1x4', 19.05, 88.9],
    ['softwood-1x6', 19.05, 139.7],
    ['softwood-2x4', 38.1, 88.9],
  ])('%s measures %d x %d mm', (id, thicknessMm, widthMm) => {
    expect(board(id).figures.thicknessActual?.typical).toBe(thicknessMm);
    expect(board(id).figures.width?.typical).toBe(widthMm);
  });

  it('are sold by their true length: 8 ft is 2.4384 m', () => {
    const eight = board('softwood-1x4').packs.find(({ label }) => label === '8 ft');
    expect(eight?.amount).toBeCloseTo(8 * 0.3048, DECIMALS);
  });

  it('cover every board the table is asked for, and no other softwood board by inch name', () => {
    const shipped = [...products.values()]
      .filter(({ kind, choices }) => kind === 'board' && choices.species === 'softwood')
      .map(({ choices }) => choices.nominal);
    expect(shipped.sort()).toEqual(PS_20.map(([nominal]) => nominal).sort());
  });

  it('are all thinner and narrower than their name says', () => {
    for (const [nominal] of PS_20) {
      const { figures } = board(`softwood-${nominal}`);
      const [thicknessIn = 0, widthIn = 0] = nominal.split('x').map(Number);
      expect(figures.thicknessActual?.typical).toBeLessThan(thicknessIn * INCH);
      expect(figures.width?.typical).toBeLessThan(widthIn * INCH);
    }
  });
});
