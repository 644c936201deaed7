import fc from 'fast-check';
import {
  boardProduct,
  type CuttingProject,
  cuttingProject,
  type Row,
  sheetProduct,
} from '../cutting-project.ts';

/** Random cutting projects whose every part fits: sheets of two sizes or one, with offcuts on hand, or boards. */

const sheetRow: fc.Arbitrary<Row> = fc.record({
  lengthMm: fc.integer({ min: 80, max: 1200 }),
  widthMm: fc.integer({ min: 80, max: 1200 }),
  count: fc.integer({ min: 1, max: 4 }),
  grain: fc.constantFrom('along' as const, 'across' as const, 'free' as const),
});

export const sheetProjects: fc.Arbitrary<CuttingProject> = fc
  .record({
    rows: fc.array(sheetRow, { minLength: 1, maxLength: 8 }),
    kerfMm: fc.constantFrom(0, 2.4, 3.2),
    sheetTrimMm: fc.constantFrom(0, 6),
    second: fc.boolean(),
    onHand: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ rows, kerfMm, sheetTrimMm, second, onHand }) =>
    cuttingProject(
      [
        sheetProduct([
          { lengthMm: 2500, widthMm: 1250, price: 6000 },
          ...(second ? [{ lengthMm: 1525, widthMm: 1525, price: 4500 }] : []),
        ]),
      ],
      rows,
      {
        settings: { kerfMm, sheetTrimMm },
        onHand:
          onHand === 0
            ? []
            : [
                { id: '7', productId: 'birch-18', amount: 1, count: onHand, lengthMm: 800, widthMm: 600 },
                { id: '8', productId: 'birch-18', amount: 1, count: 1, lengthMm: 800, widthMm: 600 },
              ],
      },
    ),
  );

export const boardProjects: fc.Arbitrary<CuttingProject> = fc
  .record({
    rows: fc.array(
      fc.record({
        lengthMm: fc.integer({ min: 100, max: 2400 }),
        widthMm: fc.constant(89),
        count: fc.integer({ min: 1, max: 5 }),
        grain: fc.constant('along' as const),
      }),
      { minLength: 1, maxLength: 8 },
    ),
    kerfMm: fc.constantFrom(0, 3),
    second: fc.boolean(),
  })
  .map(({ rows, kerfMm, second }) =>
    cuttingProject(
      [
        boardProduct(89, [
          { lengthMm: 2400, price: 700 },
          ...(second ? [{ lengthMm: 3000, price: 850 }] : []),
        ]),
      ],
      rows,
      { settings: { kerfMm } },
    ),
  );
