import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuttingSearch } from '../../../../server/planning/cutting/anytime/cutting-search.ts';
import { type ExactPlan, exactSheets } from '../../../../server/planning/cutting/anytime/exact-sheets.ts';
import {
  type CuttingQuestion,
  cuttingQuestion,
} from '../../../../server/planning/cutting/found/cutting-question.ts';
import { foundFault } from '../../../../server/planning/cutting/found/found-fault.ts';
import { foundCost } from '../../../../server/planning/cutting/found/with-found.ts';
import type { OnHand } from '../../../../server/planning/project-input.ts';
import { cuttingProject, type Row, row, sheetProduct } from '../cutting-project.ts';
import { leastCostByTrying } from '../least-cost-by-trying.ts';

function questionOf(rows: readonly Row[], onHand: readonly OnHand[] = [], kerfMm = 3): CuttingQuestion {
  const product = sheetProduct([
    { lengthMm: 1000, widthMm: 600, price: 100 },
    { lengthMm: 700, widthMm: 600, price: 64 },
  ]);
  const { input, parts } = cuttingProject([product], rows, { settings: { kerfMm }, onHand });
  const asked = cuttingQuestion(input, parts, product.id);
  if (asked === null) throw new Error('nothing is asked');
  return asked.question;
}

function solved(question: CuttingQuestion): ExactPlan | null {
  const work = exactSheets(question.job);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

const offcut = (lengthMm: number, widthMm: number, count = 1): OnHand => ({
  id: `${lengthMm}`,
  productId: 'birch-18',
  amount: 1,
  count,
  lengthMm,
  widthMm,
});

describe('trying everything by sets', () => {
  it('costs what trying every cut costs, and can be cut', () => {
    const rows = fc.array(
      fc.record({
        lengthMm: fc.integer({ min: 150, max: 700 }),
        widthMm: fc.integer({ min: 150, max: 600 }),
        count: fc.integer({ min: 1, max: 2 }),
        grain: fc.constantFrom('along' as const, 'free' as const),
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(rows, fc.constantFrom(0, 3.2), (all: Row[], kerfMm) => {
        fc.pre(all.reduce((sum, { count }) => sum + count, 0) <= 5);
        const question = questionOf(all, [], kerfMm);
        const plan = solved(question);
        if (plan === null) throw new Error('a handful of pieces is too much');
        expect(foundFault(question, plan.sheets)).toBe(null);
        expect(foundCost(question.job, plan.sheets)).toBe(plan.cost);
        const pieces = all.flatMap(({ count, grain, lengthMm, widthMm }) =>
          Array.from({ length: count }, () => ({ lengthMm, widthMm, turnable: grain === 'free' })),
        );
        const stocks = [
          { lengthMm: 1000, widthMm: 600, cost: 100 },
          { lengthMm: 700, widthMm: 600, cost: 64 },
        ];
        expect(plan.cost).toBe(leastCostByTrying(pieces, stocks, kerfMm));
      }),
      { numRuns: 120, seed: 4 },
    );
  }, 120_000);

  it('knows that a pinwheel cannot be cut from edge to edge', () => {
    // Four of 3 x 2 round a 1 x 1 fill 5 x 5 without a straight cut right across. On a sheet of 500 x 500: two of them.
    const product = sheetProduct([{ lengthMm: 500, widthMm: 500, price: 100 }]);
    const { input, parts } = cuttingProject([product], [row(300, 200, 4, 'free'), row(100, 100)], {
      settings: { kerfMm: 0 },
    });
    const question = cuttingQuestion(input, parts, product.id)?.question as CuttingQuestion;
    expect(solved(question)?.cost).toBe(200);
    // The bound by weights sees one sheet full to the edge; only trying everything proves two.
    const search = cuttingSearch(question, null, 1);
    search.run(1);
    expect(search.plan.boundCost).toBe(100);
    while (!search.proven && search.run(1));
    expect([search.plan.cost, search.plan.boundCost, search.plan.boundStocks]).toEqual([200, 200, 2]);
  });

  it('uses the offcuts on hand where they save a sheet, each once', () => {
    // Two parts of 400 x 300 on two offcuts of their size, one on the cheaper sheet.
    const question = questionOf([row(400, 300, 3)], [offcut(400, 300, 2)]);
    const plan = solved(question);
    expect(plan?.cost).toBe(64);
    expect(foundFault(question, plan?.sheets ?? [])).toBe(null);
    const enough = questionOf([row(400, 300, 3)], [offcut(400, 300, 2), offcut(410, 310)]);
    expect(solved(enough)?.cost).toBe(0);
  });

  it('gives up large jobs, and those with many offcuts, at once', () => {
    const rows = Array.from({ length: 18 }, (_, index) => row(200 + index, 150));
    expect(exactSheets(questionOf(rows).job).next()).toEqual({ done: true, value: null });
    const shelf = questionOf([row(200, 150)], [offcut(300, 200, 5)]);
    expect(exactSheets(shelf.job).next()).toEqual({ done: true, value: null });
  });
});
