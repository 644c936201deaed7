import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import type { Product } from '../../server/planning/product.ts';

/** Sheet sizes, plywood thicknesses and banding widths in the catalogue against published tables. */

const products = new Map(readCatalogue().products.map((product) => [product.id, product]));
const INCH = 25.4;

function product(id: string): Product {
  const found = products.get(id);
  if (found === undefined) throw new RangeError(`no product "${id}" is shipped`);
  return found;
}

function sizes(id: string): string[] {
  return product(id).packs.map(({ lengthMm, widthMm }) => `${lengthMm} x ${widthMm}`);
}

describe('softwood plywood', () => {
  // PS 1 performance categories, APA-Europe page: category, least, most, thickness on the panel mark, inches;
  // then least and most in millimetres as the page prints them.
  it.each([
    ['1/4', 0.219, 0.281, 0.225, 5.56, 7.14],
    ['11/32', 0.313, 0.375, 0.322, 7.94, 9.53],
    ['3/8', 0.344, 0.406, 0.354, 8.73, 10.32],
    ['15/32', 0.438, 0.5, 0.451, 11.11, 12.7],
    ['1/2', 0.469, 0.531, 0.483, 11.91, 13.49],
    ['19/32', 0.563, 0.625, 0.578, 14.29, 15.88],
    ['5/8', 0.594, 0.656, 0.609, 15.08, 16.67],
    ['23/32', 0.688, 0.75, 0.703, 17.46, 19.05],
    ['3/4', 0.719, 0.781, 0.734, 18.26, 19.84],
  ])('of category %s has the limits of PS 1', (category, leastIn, mostIn, markIn, leastMm, mostMm) => {
    const { figures } = product(`softwood-ply-${category.replace('/', '-')}in`);
    expect(figures.thicknessActual?.low).toBeCloseTo(leastIn * INCH, 3);
    expect(figures.thicknessActual?.high).toBeCloseTo(mostIn * INCH, 3);
    expect(figures.thicknessActual?.typical).toBeCloseTo(markIn * INCH, 3);
    expect(figures.thicknessActual?.source).toMatch(/PS 1/);
    // The page rounds 64ths to three decimals of an inch before printing, so its mm differ by up to half of that.
    expect(Math.abs((figures.thicknessActual?.low ?? 0) - leastMm)).toBeLessThan(0.02);
    expect(Math.abs((figures.thicknessActual?.high ?? 0) - mostMm)).toBeLessThan(0.02);
  });

  it('of the categories up to 13/16 may be 1/32 in off either way', () => {
    // PS 1 by the same page: +-1/32 in (0.8 mm) to 13/16. The three decimals printed hide 0.0005 in.
    for (const category of ['1/4', '11/32', '3/8', '15/32', '1/2', '19/32', '5/8', '23/32', '3/4']) {
      const { figures } = product(`softwood-ply-${category.replace('/', '-')}in`);
      const nominalIn = (figures.thicknessNominal?.typical ?? 0) / INCH;
      expect((figures.thicknessActual?.high ?? 0) / INCH - nominalIn).toBeCloseTo(1 / 32, 2);
      expect(nominalIn - (figures.thicknessActual?.low ?? 0) / INCH).toBeCloseTo(1 / 32, 2);
    }
  });
});

describe('birch plywood', () => {
  // GB/T 9846 sanded: +(0.2 + 0.03 t) / -(0.4 + 0.03 t) mm. At 18 mm by hand: 18 - 0.94 = 17.06, 18 + 0.74 = 18.74.
  it('of 18 mm measures 17.06 to 18.74 mm', () => {
    const actual = product('birch-ply-18').figures.thicknessActual;
    expect([actual?.low, actual?.high]).toEqual([17.06, 18.74]);
  });

  // The same tolerance as a birch mill prints it: deviation below and above the name, mm, to a tenth.
  it.each([
    [4, 0.5, 0.3],
    [9, 0.5, 0.4],
    [12, 0.7, 0.5],
    [15, 0.8, 0.6],
    [18, 0.9, 0.7],
    [24, 1.1, 0.9],
  ])('of %d mm keeps within 0.2 mm of the tolerance a mill prints', (nominalMm, belowMm, aboveMm) => {
    const actual = product(`birch-ply-${nominalMm}`).figures.thicknessActual;
    expect(Math.abs((actual?.low ?? 0) - (nominalMm - belowMm))).toBeLessThan(0.2);
    expect(Math.abs((actual?.high ?? 0) - (nominalMm + aboveMm))).toBeLessThan(0.2);
  });

  it('sold as 3/4 in is 1/32 to 1/16 in under', () => {
    // Popular Woodworking no. 148 (June 2005): 3/4 - 1/16 = 11/16 in = 17.4625 mm; 3/4 - 1/32 = 23/32 = 18.25625 mm
    const actual = product('birch-ply-3-4in').figures.thicknessActual;
    expect(actual?.low).toBeCloseTo((11 / 16) * INCH, 3);
    expect(actual?.typical).toBeCloseTo((23 / 32) * INCH, 3);
    expect(actual?.high).toBeCloseTo((23 / 32) * INCH, 3);
  });
});

describe('sheets', () => {
  // diyfixit.co.uk: 2440 x 1220 and 3050 x 1525 mm; 4 x 8 ft = 2440 x 1220 also by the APA-Europe page.
  it('of birch 18 mm come in the metric sizes', () => {
    expect(sizes('birch-ply-18')).toEqual(['2440 x 1220', '1525 x 1525', '3050 x 1525']);
  });

  // woodmagazine.com, make the most of your materials: sheets 48 x 96 in; MDF often 49 x 97; birch 60 x 60.
  it('of birch 3/4 in are 48 x 96 and 60 x 60 in', () => {
    // 96 x 25.4 = 2438.4; 48 x 25.4 = 1219.2; 60 x 25.4 = 1524
    expect(sizes('birch-ply-3-4in')).toEqual(['2438.4 x 1219.2', '1524 x 1524']);
  });

  it('of MDF 3/4 in are one inch larger each way', () => {
    // 97 x 25.4 = 2463.8; 49 x 25.4 = 1244.6
    expect(sizes('mdf-3-4in')).toEqual(['2463.8 x 1244.6']);
  });

  it('of a US size are not the metric ones: 48 x 96 in is 1.6 mm short of 2440 mm', () => {
    expect(2440 - (product('softwood-ply-3-4in').packs[0]?.lengthMm ?? 0)).toBeCloseTo(1.6, 6);
  });
});

describe('edge banding', () => {
  // Widths named in a magazine article on plywood edges and an edge-banding guide, inches.
  it.each([
    ['birch-veneer-5-8in', 5 / 8],
    ['birch-veneer-13-16in', 13 / 16],
    ['birch-veneer-7-8in', 7 / 8],
    ['birch-veneer-2in', 2],
  ])('%s is as wide as its name', (id, widthIn) => {
    expect(product(id).figures.width?.typical).toBeCloseTo(widthIn * INCH, 3);
  });

  it('of 7/8 in leaves 5/64 in on each face of ply that measures 23/32 in, and 13/16 in only 3/64', () => {
    // by hand: (7/8 - 23/32) / 2 = (28/32 - 23/32) / 2 = 5/64; (26/32 - 23/32) / 2 = 3/64
    const plyMm = product('birch-ply-3-4in').figures.thicknessActual?.typical ?? 0;
    const eachSide = (id: string) => ((product(id).figures.width?.typical ?? 0) - plyMm) / 2 / INCH;
    expect(eachSide('birch-veneer-7-8in')).toBeCloseTo(5 / 64, 4);
    expect(eachSide('birch-veneer-13-16in')).toBeCloseTo(3 / 64, 4);
  });

  // data sheet of a board and edge-tape range: 22/29/40 mm wide, 1.0 mm thick, rolls of 25 and 100 m
  it.each([22, 29, 40])('of plastic comes %d mm wide in rolls of 25 and 100 m', (widthMm) => {
    const { figures, packs } = product(`plastic-white-${widthMm}x1`);
    expect(figures.width?.typical).toBe(widthMm);
    expect(figures.thicknessActual?.typical).toBe(1);
    expect(packs.map(({ amount }) => amount)).toEqual([25, 100]);
  });

  it('of veneer comes in rolls of 25 to 250 ft', () => {
    // themessyworkbench.blogspot.com, May 2015. 25 ft = 7.62 m; 250 ft = 76.2 m
    expect(product('birch-veneer-7-8in').packs.map(({ amount }) => amount)).toEqual([7.62, 15.24, 76.2]);
  });
});
