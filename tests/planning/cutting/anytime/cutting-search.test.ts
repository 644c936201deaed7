import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CuttingSearch,
  cuttingSearch,
} from '../../../../server/planning/cutting/anytime/cutting-search.ts';
import {
  type AskedQuestion,
  cuttingQuestion,
} from '../../../../server/planning/cutting/found/cutting-question.ts';
import { foundFault } from '../../../../server/planning/cutting/found/found-fault.ts';
import { foundFromLayouts } from '../../../../server/planning/cutting/found/found-from-layouts.ts';
import { foundLayouts } from '../../../../server/planning/cutting/found/found-layouts.ts';
import { largestOffcutMm2 } from '../../../../server/planning/cutting/largest-offcut.ts';
import { planMaterials } from '../../../../server/planning/cutting/plan-materials.ts';
import type { FoundSheet } from '../../../../server/planning/project-input.ts';
import { brokenRules } from '../check-layout.ts';
import {
  boardProduct,
  type CuttingProject,
  cuttingProject,
  type Row,
  row,
  sheetProduct,
} from '../cutting-project.ts';
import { boardProjects, sheetProjects } from '../found/random-cutting.ts';
import { leastCostByTrying } from '../least-cost-by-trying.ts';

function asked(project: CuttingProject): AskedQuestion {
  const found = cuttingQuestion(project.input, project.parts, project.input.catalogue.products[0]?.id ?? '');
  if (found === null) throw new Error('nothing is asked');
  return found;
}

/** Runs to the end, or so far. */
function ran(search: CuttingSearch, steps: number): CuttingSearch {
  search.run(steps);
  return search;
}

function costOf(question: AskedQuestion, sheets: readonly FoundSheet[]): number {
  return sheets.reduce(
    (sum, { stock, count }) => sum + count * (question.question.job.stocks[stock]?.cost ?? 0),
    0,
  );
}

describe('the long search', () => {
  it('begins where the plan of the edit ended, and every better plan can be cut at no more cost', () => {
    fc.assert(
      fc.property(fc.oneof(sheetProjects, boardProjects), (project) => {
        const question = asked(project);
        const [plan] = planMaterials(project.input, project.parts).materials;
        const start = foundFromLayouts(question, plan?.layouts ?? []);
        if (start === null || plan === undefined) throw new Error('no start');
        const { plan: found } = ran(cuttingSearch(question.question, start, 1), 60);
        expect(foundFault(question.question, found.sheets)).toBe(null);
        expect(found.cost).toBe(costOf(question, found.sheets));
        expect(found.cost).toBeLessThanOrEqual(plan.costMinor.value ?? 0);
        expect(found.boundCost).toBeLessThanOrEqual(found.cost);
        const layouts = foundLayouts(question, found.sheets);
        expect(found.offcutMm2).toBeCloseTo(largestOffcutMm2(layouts), -2);
        if (found.cost === plan.costMinor.value)
          expect(largestOffcutMm2(layouts)).toBeGreaterThanOrEqual(largestOffcutMm2(plan.layouts) - 100);
        const { kerfMm, sheetTrimMm } = project.input.settings;
        const rules = {
          kerfMm,
          trimMm: plan.kind === 'board' ? 0 : sheetTrimMm,
          demands: project.demands,
          onHand: new Map(project.input.onHand.map(({ id, count }) => [id, count])),
        };
        expect(brokenRules({ layouts }, rules)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  }, 120_000);

  it('costs as little as trying everything, and bounds no more', () => {
    const rows = fc.array(
      fc.record({
        lengthMm: fc.integer({ min: 200, max: 1000 }),
        widthMm: fc.integer({ min: 200, max: 600 }),
        count: fc.constant(1),
        grain: fc.constantFrom('along' as const, 'free' as const),
      }),
      { minLength: 3, maxLength: 5 },
    );
    fc.assert(
      fc.property(
        rows,
        fc.constantFrom(0, 3.2),
        fc.integer({ min: 20, max: 90 }),
        (all: Row[], kerfMm, price) => {
          const stocks = [
            { lengthMm: 1000, widthMm: 600, cost: 100 },
            { lengthMm: 700, widthMm: 600, cost: price },
          ];
          const packs = stocks.map(({ lengthMm, widthMm, cost }) => ({ lengthMm, widthMm, price: cost }));
          const question = asked(cuttingProject([sheetProduct(packs)], all, { settings: { kerfMm } }));
          const least = leastCostByTrying(
            all.map(({ lengthMm, widthMm, grain }) => ({ lengthMm, widthMm, turnable: grain === 'free' })),
            stocks,
            kerfMm,
          );
          const search = ran(cuttingSearch(question.question, null, 1), 120);
          expect(search.plan.boundCost).toBeLessThanOrEqual(least);
          expect(search.plan.cost).toBe(least);
        },
      ),
      { numRuns: 60, seed: 3 },
    );
  }, 120_000);

  it('is the same for the same seed and steps, whatever is run between', () => {
    const project = cuttingProject(
      [sheetProduct([{ lengthMm: 2500, widthMm: 1250, price: 6000 }])],
      [
        row(715, 560, 8),
        row(564, 540, 9),
        row(700, 380, 7, 'free'),
        row(1100, 300, 6),
        row(420, 410, 11, 'free'),
      ],
    );
    const { question } = asked(project);
    const whole = ran(cuttingSearch(question, null, 7), 200).plan;
    const parts = cuttingSearch(question, null, 7);
    for (let run = 0; run < 50; run++) {
      parts.run(4);
      cuttingSearch(question, null, 8).run(1);
    }
    expect(parts.plan).toEqual(whole);
  });

  it('gathers the waste in one offcut: 700 mm off the length where the parts leave it', () => {
    // Three parts of 600 x 1250 mm side by side with 3 mm kerfs: 3 x 603 = 1809, so 691 mm are left over the full width.
    const product = sheetProduct([{ lengthMm: 2500, widthMm: 1250, price: 6000 }]);
    const question = asked(cuttingProject([product], [row(600, 620, 3), row(600, 627, 3)]));
    const piece = (index: number) => ({ piece: index, turned: false });
    // Rows of two over the whole length: the offcut is spread.
    const start: FoundSheet[] = [
      {
        stock: 0,
        count: 1,
        cut: {
          along: 'length',
          cuts: [
            { along: 'width', cuts: [piece(0), piece(1)] },
            { along: 'width', cuts: [piece(0), piece(1)] },
            piece(0),
            piece(1),
          ],
        },
      },
    ];
    expect(foundFault(question.question, start)).toBe(null);
    const search = cuttingSearch(question.question, start, 1);
    const before = search.plan.offcutMm2;
    expect(ran(search, 400).plan.cost).toBe(6000);
    // 1250 - 620 - 3 - 627 = 0: a column of both fills the width.
    expect(before).toBeLessThan(0.6 * 691 * 1250);
    expect(search.plan.offcutMm2).toBeCloseTo(691 * 1250, -2);
  });

  it('leaves the longest board end it can, and ends when there is nothing left to try', () => {
    // 3 x 1200 + 3 x 700 = 5700 mm from boards of 2400 mm: three of them, with 1500 mm over in all.
    const question = asked(
      cuttingProject(
        [boardProduct(89, [{ lengthMm: 2400, price: 700 }])],
        [row(1200, 89, 3), row(700, 89, 3)],
        {
          settings: { kerfMm: 0 },
        },
      ),
    );
    const search = cuttingSearch(question.question, null, 1);
    expect(search.run(100_000)).toBe(false);
    expect([search.plan.cost, search.proven]).toEqual([2100, true]);
    // 1200 + 1200 | 700 + 700 + 700 | 1200 leaves 1200; a single 700 would leave 5000 mm for two boards of 2400.
    expect(search.plan.offcutMm2).toBeCloseTo(1200 * 89, -2);
  });
});
