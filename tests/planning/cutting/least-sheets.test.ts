import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planMaterials } from '../../../server/planning/cutting/plan-materials.ts';
import { brokenRules } from './check-layout.ts';
import { cuttingProject, type Row, sheetProduct } from './cutting-project.ts';

interface Size {
  readonly length: number;
  readonly width: number;
}

interface Stock extends Size {
  readonly price: number;
}

/**
 * The slow twin: every rectangle that each set of pieces can be cut from by guillotine cuts, made from every way to
 * split the set in two, side by side or one above the other; then every way to share the pieces out to sheets. A kerf
 * is reckoned by making pieces and sheets one kerf larger.
 */
function leastCost(rows: readonly Row[], stocks: readonly Stock[], kerf: number): number {
  const pieces = rows.flatMap((each) => Array<Row>(each.count).fill(each));
  const all = (1 << pieces.length) - 1;
  const shapes: Size[][] = [[]];
  for (let set = 1; set <= all; set++) {
    const found: Size[] = [];
    const only = pieces.findIndex((_, index) => set === 1 << index);
    const piece = pieces[only];
    if (piece !== undefined) {
      const plain = { length: piece.lengthMm + kerf, width: piece.widthMm + kerf };
      const turned = { length: plain.width, width: plain.length };
      if (piece.grain !== 'across') found.push(plain);
      if (piece.grain !== 'along') found.push(turned);
    }
    for (let half = (set - 1) & set; half > set / 2 - 1 && half > 0; half = (half - 1) & set)
      for (const first of shapes[half] ?? [])
        for (const second of shapes[set ^ half] ?? []) {
          found.push({ length: first.length + second.length, width: Math.max(first.width, second.width) });
          found.push({ length: Math.max(first.length, second.length), width: first.width + second.width });
        }
    shapes.push(undominated(found));
  }
  const price = shapes.map((sizes) => {
    const fitting = stocks.filter((stock) =>
      sizes.some(({ length, width }) => length <= stock.length + kerf && width <= stock.width + kerf),
    );
    return Math.min(...fitting.map((stock) => stock.price));
  });
  const cost = [0];
  for (let set = 1; set <= all; set++) {
    let least = Number.POSITIVE_INFINITY;
    for (let part = set; part > 0; part = (part - 1) & set)
      least = Math.min(least, Number(price[part]) + Number(cost[set ^ part]));
    cost.push(least);
  }
  return Number(cost[all]);
}

function undominated(sizes: readonly Size[]): Size[] {
  const sorted = sizes.slice().sort((a, b) => a.length - b.length || a.width - b.width);
  const kept: Size[] = [];
  for (const size of sorted)
    if (size.width < (kept.at(-1)?.width ?? Number.POSITIVE_INFINITY)) kept.push(size);
  return kept;
}

describe('the slow twin itself', () => {
  it('knows that five equal pieces in a pinwheel need no guillotine plan of one sheet', () => {
    // Four 3 x 2 round a 1 x 1 fill 5 x 5 without overlap, but no straight cut gets through.
    const pinwheel: Row[] = [
      { lengthMm: 3, widthMm: 2, count: 4, grain: 'free' },
      { lengthMm: 1, widthMm: 1, count: 1, grain: 'free' },
    ];
    expect(leastCost(pinwheel, [{ length: 5, width: 5, price: 1 }], 0)).toBe(2);
    expect(leastCost(pinwheel, [{ length: 6, width: 5, price: 1 }], 0)).toBe(1);
  });
});

describe('a plan for up to six pieces', () => {
  it('costs as little as trying everything, and never claims a bound above that', () => {
    const rows = fc.array(
      fc.record({
        lengthMm: fc.integer({ min: 10, max: 100 }),
        widthMm: fc.integer({ min: 10, max: 60 }),
        count: fc.integer({ min: 1, max: 2 }),
        grain: fc.constantFrom('along' as const, 'across' as const, 'free' as const),
      }),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(
        rows,
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 2, max: 9 }),
        (all, kerfMm, price) => {
          const cuttable = all.filter(({ grain, lengthMm }) => grain !== 'across' || lengthMm <= 60);
          fc.pre(cuttable.length > 0 && cuttable.reduce((sum, { count }) => sum + count, 0) <= 6);
          const stocks = [
            { length: 100, width: 60, price: 10 },
            { length: 70, width: 50, price },
          ];
          const product = sheetProduct(
            stocks.map((stock) => ({ lengthMm: stock.length, widthMm: stock.width, price: stock.price })),
          );
          const project = cuttingProject([product], cuttable, { settings: { kerfMm } });
          const plan = planMaterials(project.input, project.parts).materials[0];
          if (plan === undefined) throw new Error('nothing was planned');
          expect(brokenRules(plan, { kerfMm, trimMm: 0, demands: project.demands })).toEqual([]);
          const least = leastCost(cuttable, stocks, kerfMm);
          expect(plan.costMinor.value).toBe(least);
          if (plan.proven) expect(plan.costMinor.value).toBe(least);
        },
      ),
      { numRuns: 200, seed: 1 },
    );
  });
});
