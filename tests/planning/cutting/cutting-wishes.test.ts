import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuttingSearch } from '../../../server/planning/cutting/anytime/cutting-search.ts';
import {
  type AskedQuestion,
  cuttingQuestion,
} from '../../../server/planning/cutting/found/cutting-question.ts';
import { foundFault } from '../../../server/planning/cutting/found/found-fault.ts';
import { foundFromLayouts } from '../../../server/planning/cutting/found/found-from-layouts.ts';
import { foundLayouts } from '../../../server/planning/cutting/found/found-layouts.ts';
import { planMaterials } from '../../../server/planning/cutting/plan-materials.ts';
import type { MaterialPlan } from '../../../server/planning/plan-output.ts';
import { brokenRules } from './check-layout.ts';
import { brokenWishes } from './check-wishes.ts';
import { boardProduct, type CuttingProject, cuttingProject, row, sheetProduct } from './cutting-project.ts';

const sheet = sheetProduct([{ lengthMm: 2440, widthMm: 1220, price: 6000 }]);

/** The project with a match name per row; '' for none. */
function matched(project: CuttingProject, names: readonly string[]): CuttingProject {
  const parts = project.input.parts.map((part, index) => ({ ...part, grainMatch: names[index] ?? '' }));
  return { ...project, input: { ...project.input, parts } };
}

/** Part ids of each match, one for each piece, in the order of the part list. */
function matchesOf({ input, demands }: CuttingProject): string[][] {
  const names = new Set(input.parts.map(({ grainMatch }) => grainMatch).filter((name) => name !== ''));
  return [...names]
    .map((name) =>
      demands
        .filter(({ partId }) => input.parts.find(({ id }) => id === partId)?.grainMatch === name)
        .flatMap(({ partId, count }) => Array<string>(count).fill(partId)),
    )
    .filter(({ length }) => length > 1);
}

function faults(project: CuttingProject, plan: Pick<MaterialPlan, 'layouts'>): string[] {
  const { kerfMm, sheetTrimMm: trimMm, cutStages: stages } = project.input.settings;
  return [
    ...brokenRules(plan, { kerfMm, trimMm, demands: project.demands }),
    ...brokenWishes(plan, { kerfMm, stages, matches: matchesOf(project) }),
  ];
}

function planned(project: CuttingProject) {
  const { materials, problems } = planMaterials(project.input, project.parts);
  return { plan: materials[0] as MaterialPlan, problems };
}

describe('a limit on the stages of cuts', () => {
  // 2440 x 1220, kerf 3, each row's parts fixed: 1220 x 800 beside 1217 x 400 above 1217 x 397 fills 2440 x 800 in three
  // stages (strip, crosscut, rip again): 1220 + 3 + 1217 = 2440 and 400 + 3 + 397 = 800. Below it 2440 x 417 fills the
  // rest: 800 + 3 + 417 = 1220. In two stages the four parts need strips of 800 + 3 + 417 and one of 400 or 397 more.
  const rows = [row(1220, 800), row(1217, 400), row(1217, 397), row(2440, 417)];

  it('is kept, at the price of a sheet, and is not called proven where the bound does not reach it', () => {
    for (const [cutStages, sheets, proven] of [
      [null, 1, true],
      [3, 1, true],
      [2, 2, false],
    ] as const) {
      const project = cuttingProject([sheet], rows, { settings: { cutStages } });
      const { plan } = planned(project);
      expect([cutStages, plan.stocks.value, plan.proven]).toEqual([cutStages, sheets, proven]);
      expect(faults(project, plan)).toEqual([]);
    }
  });
});

describe('parts of one grain match', () => {
  it('come from one piece, end to end along the grain in their order, although singly they would lie otherwise', () => {
    const fronts = [row(700, 200), row(800, 200, 2), row(300, 180)];
    const project = matched(cuttingProject([sheet], [...fronts, row(2440, 1000)]), ['top', 'top', '', '']);
    const { plan, problems } = planned(project);
    expect(problems).toEqual([]);
    expect(faults(project, plan)).toEqual([]);
    expect(matchesOf(project)).toEqual([['1', '2', '2']]);
    // 700 + 800 + 800 and two kerfs of 3.
    expect(JSON.stringify(plan.layouts)).toContain('"lengthMm":2306,"widthMm":200');
  });

  it('lie side by side where no sheet is long enough for them end to end', () => {
    const project = matched(cuttingProject([sheet], [row(1300, 300, 2)]), ['doors']);
    const { plan, problems } = planned(project);
    expect(problems).toEqual([]);
    // Two of 300 and a kerf of 3.
    expect(JSON.stringify(plan.layouts)).toContain('"lengthMm":1300,"widthMm":603');
    expect(faults(project, plan)).toEqual([]);
  });

  it('are cut singly, and said to be, where no sheet holds them together', () => {
    const project = matched(cuttingProject([sheet], [row(1300, 700, 2)]), ['doors']);
    const { plan, problems } = planned(project);
    expect(problems.map(({ code, at }) => [code, at.table, at.id, at.field])).toEqual([
      ['grain-match-too-large', 'parts', '1', 'grainMatch'],
    ]);
    // 1300 + 3 + 1300.
    expect(problems[0]?.message).toContain('“doors” take 2603 mm x 700 mm');
    expect(plan.stocks.value).toBe(2);
  });

  it('are said to be alone where one piece has the name', () => {
    const project = matched(cuttingProject([sheet], [row(600, 300), row(500, 300)]), ['top', '']);
    expect(planned(project).problems.map(({ code }) => code)).toEqual(['grain-match-alone']);
  });

  it('come from one board, too', () => {
    const board = boardProduct(89, [{ lengthMm: 2400, price: 700 }]);
    const project = matched(cuttingProject([board], [row(1000, 89, 2), row(1300, 89, 2)]), ['rail', '']);
    const { plan } = planned(project);
    // 1000 + 3 + 1000 leaves no room for 1300, so each of those takes a board of its own.
    expect(plan.stocks.value).toBe(3);
    expect(faults(project, plan)).toEqual([]);
  });
});

describe('every plan with wishes', () => {
  const wished = fc
    .record({
      rows: fc.array(
        fc.record({
          lengthMm: fc.integer({ min: 100, max: 900 }),
          widthMm: fc.integer({ min: 80, max: 500 }),
          count: fc.integer({ min: 1, max: 3 }),
          grain: fc.constantFrom('along' as const, 'across' as const, 'free' as const),
        }),
        { minLength: 2, maxLength: 12 },
      ),
      names: fc.array(fc.constantFrom('', '', '', 'a', 'b'), { minLength: 12, maxLength: 12 }),
      cutStages: fc.constantFrom(2 as const, 3 as const, null),
      sheetTrimMm: fc.constantFrom(0, 6),
    })
    .map(({ rows, names, ...settings }) => matched(cuttingProject([sheet], rows, { settings }), names));

  it('can be cut and meets them, by an edit’s plan and by a longer search; a plan reads back as it was', () => {
    fc.assert(
      fc.property(wished, (project) => {
        const { plan, problems } = planned(project);
        if (problems.some(({ code }) => code === 'grain-match-too-large')) return;
        expect(faults(project, plan)).toEqual([]);
        const asked = cuttingQuestion(project.input, project.parts, 'birch-18') as AskedQuestion;
        const start = foundFromLayouts(asked, plan.layouts) ?? [];
        expect(foundFault(asked.question, start)).toBe(null);
        const search = cuttingSearch(asked.question, start, 1);
        search.run(6);
        expect(foundFault(asked.question, search.plan.sheets)).toBe(null);
        expect(search.plan.boundCost).toBeLessThanOrEqual(search.plan.cost);
        expect(faults(project, { layouts: foundLayouts(asked, search.plan.sheets) })).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});
