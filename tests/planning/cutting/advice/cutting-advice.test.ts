import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AdviceSearch } from '../../../../server/planning/cutting/advice/advice-search.ts';
import { adviceSentence } from '../../../../server/planning/cutting/advice/advice-sentence.ts';
import {
  type AdviceSubject,
  adviceSubject,
} from '../../../../server/planning/cutting/advice/advice-subject.ts';
import type { CuttingAdvice } from '../../../../server/planning/cutting/advice/cutting-advice.ts';
import { cuttingQuestion } from '../../../../server/planning/cutting/found/cutting-question.ts';
import { foundFromLayouts } from '../../../../server/planning/cutting/found/found-from-layouts.ts';
import { planMaterials } from '../../../../server/planning/cutting/plan-materials.ts';
import type { PartInput, ProjectInput } from '../../../../server/planning/project-input.ts';
import {
  boardProduct,
  type CuttingProject,
  cuttingProject,
  type Row,
  row,
  sheetProduct,
} from '../cutting-project.ts';
import { leastCostByTrying } from '../least-cost-by-trying.ts';

const sheet = sheetProduct([{ lengthMm: 2500, widthMm: 1250, price: 6000 }]);
const id = (project: CuttingProject): string => project.input.catalogue.products[0]?.id ?? '';

function subjectOf(project: CuttingProject): AdviceSubject {
  const subject = adviceSubject(project.input, project.parts, id(project));
  if (subject === null) throw new Error('there is nothing to advise on');
  return subject;
}

/** Everything there is to say about the plan of an edit. */
function adviceOn(project: CuttingProject): readonly CuttingAdvice[] {
  const asked = cuttingQuestion(project.input, project.parts, id(project));
  const [plan] = planMaterials(project.input, project.parts).materials;
  const sheets = asked === null || plan === undefined ? null : foundFromLayouts(asked, plan.layouts);
  if (sheets === null) throw new Error('there is no plan');
  const search = new AdviceSearch(subjectOf(project), sheets);
  while (search.step());
  return search.advice;
}

function withRows(project: CuttingProject, values: (row: PartInput) => Partial<PartInput>): CuttingProject {
  const input: ProjectInput = {
    ...project.input,
    parts: project.input.parts.map((each) => ({ ...each, ...values(each) })),
  };
  return { ...project, input };
}

describe('advice on cutting', () => {
  it('finds the fewest millimetres that save a sheet', () => {
    // Four columns of 622.75 mm would fill 2500 mm with three kerfs of 3 mm: 4 x 622.75 + 9 = 2500. The side of 625 mm
    // must be at least 2.25 mm shorter, so 3 mm in whole ones.
    const project = cuttingProject([sheet], [row(625, 1250, 4)]);
    const smaller = adviceOn(project).filter(({ change }) => change.kind === 'smaller');
    expect(smaller).toEqual([
      {
        change: { kind: 'smaller', partId: '1', side: 'length', byMm: 3 },
        before: { stocks: 2, costMinor: 12_000 },
        after: { stocks: 1, costMinor: 6000 },
      },
    ]);
  });

  it('counts in sixteenths of an inch where the project does', () => {
    // 2.25 mm are 1.4 sixteenths, so two: 1/8 in.
    const project = cuttingProject([sheet], [row(625, 1250, 4)], { settings: { units: 'us' } });
    const [advice] = adviceOn(project).filter(({ change }) => change.kind === 'smaller');
    expect(advice?.change).toEqual({ kind: 'smaller', partId: '1', side: 'length', byMm: 3.175 });
  });

  it('says which part tips the count, and not that nothing needs no sheet', () => {
    const tipped = adviceOn(cuttingProject([sheet], [row(620, 1250, 5), row(300, 300, 1)]));
    // Four of 620 x 1250 mm and the kerfs fill 2489 of 2500 mm. The fifth takes a second sheet, where the small part lies too.
    expect(tipped.filter(({ change }) => change.kind === 'fewer')).toEqual([]);
    const one = adviceOn(cuttingProject([sheet], [row(620, 1250, 5)]));
    expect(one.filter(({ change }) => change.kind === 'fewer')).toEqual([
      {
        change: { kind: 'fewer', partId: '1' },
        before: { stocks: 2, costMinor: 12_000 },
        after: { stocks: 1, costMinor: 6000 },
      },
    ]);
    expect(adviceOn(cuttingProject([sheet], [row(620, 1250, 1)]))).toEqual([]);
  });

  it('knows when a thinner saw cut saves a sheet, and names the widest that does', () => {
    // 4 x 623 = 2492: three kerfs must fit into 8 mm. 3.2 does not (9.6), 2.4 does (7.2).
    const project = cuttingProject([sheet], [row(623, 1250, 4)], { settings: { kerfMm: 3.2 } });
    const kerf = adviceOn(project).filter(({ change }) => change.kind === 'kerf');
    expect(kerf.map(({ change, after }) => [change, after.stocks])).toEqual([
      [{ kind: 'kerf', kerfMm: 2.4 }, 1],
    ]);
    // 4 x 625 = 2500 leaves no kerf at all.
    const none = cuttingProject([sheet], [row(625, 1250, 4)], { settings: { kerfMm: 3.2 } });
    expect(adviceOn(none).filter(({ change }) => change.kind === 'kerf')).toEqual([]);
  });

  it('sets grain free only where no face is finished, or on a back', () => {
    // Three of 800 x 1250 fill 2406 mm, and 91 are left behind the last cut: a strip of 1250 x 90 goes in there only turned.
    const strips: Row[] = [
      { ...row(800, 1250, 3), name: 'Door' },
      { ...row(1250, 90, 1), name: 'Cabinet back' },
    ];
    const project = cuttingProject([sheet], strips);
    const finished = withRows(project, () => ({ showRecipeId: 'clear', backRecipeId: 'clear' }));
    const grain = (of: CuttingProject) => adviceOn(of).filter(({ change }) => change.kind === 'grain');
    const expected = [
      {
        change: { kind: 'grain', partIds: ['2'] },
        before: { stocks: 2, costMinor: 12_000 },
        after: { stocks: 1, costMinor: 6000 },
      },
    ];
    expect(grain(project)).toEqual(expected);
    expect(grain(finished)).toEqual(expected);
    const backboard = withRows(finished, ({ name }) => ({ name: name.replace('Cabinet back', 'Backboard') }));
    expect(grain(backboard)).toEqual([]);
  });

  it('says what each size would come to alone', () => {
    const two = sheetProduct([
      { lengthMm: 2500, widthMm: 1250, price: 6000 },
      { lengthMm: 1250, widthMm: 1250, price: 3500 },
    ]);
    // Three squares of 1200 mm: one large sheet holds two; so large + small = 95.00, against 2 x 60.00 and 3 x 35.00.
    const size = adviceOn(cuttingProject([two], [row(1200, 1200, 3)])).filter(
      ({ change }) => change.kind === 'size',
    );
    const before = { stocks: 2, costMinor: 9500 };
    expect(size).toEqual([
      { change: { kind: 'size', packId: 'pack-1' }, before, after: { stocks: 2, costMinor: 12_000 } },
      { change: { kind: 'size', packId: 'pack-2' }, before, after: { stocks: 3, costMinor: 10_500 } },
    ]);
    // A part of 1300 mm fits the large size only.
    const long = adviceOn(cuttingProject([two], [row(1300, 600), row(600, 600)]));
    expect(long.filter(({ change }) => change.kind === 'size')).toEqual([]);
  });

  it('holds for boards, whose width is left alone', () => {
    // 4 x 600 and three kerfs of 3 mm are 2409 of 2400 mm: 2.25 mm less each, 3 in whole ones.
    const project = cuttingProject([boardProduct(89, [{ lengthMm: 2400, price: 700 }])], [row(600, 89, 4)]);
    expect(adviceOn(project).map(({ change, after }) => [change, after.stocks])).toEqual([
      [{ kind: 'smaller', partId: '1', side: 'length', byMm: 3 }, 1],
      [{ kind: 'fewer', partId: '1' }, 1],
    ]);
  });

  it('never states what trying everything denies', () => {
    const rows = fc.array(
      fc.record({
        lengthMm: fc.integer({ min: 300, max: 1000 }),
        widthMm: fc.integer({ min: 200, max: 600 }),
        count: fc.constant(1),
        grain: fc.constantFrom('along' as const, 'free' as const),
      }),
      { minLength: 2, maxLength: 4 },
    );
    let stated = 0;
    fc.assert(
      fc.property(rows, (all: Row[]) => {
        const project = cuttingProject([sheetProduct([{ lengthMm: 1000, widthMm: 600, price: 100 }])], all);
        const least = (some: readonly Row[], kerfMm: number): number =>
          leastCostByTrying(
            some.map((each) => ({ ...each, turnable: each.grain === 'free' })),
            [{ lengthMm: 1000, widthMm: 600, cost: 100 }],
            kerfMm,
          );
        for (const { change, before, after } of adviceOn(project)) {
          stated++;
          expect(after.costMinor).toBeLessThan(before.costMinor ?? 0);
          expect(after.costMinor).toBe(100 * after.stocks);
          const at = change.kind === 'smaller' || change.kind === 'fewer' ? Number(change.partId) - 1 : -1;
          const varied = all.flatMap((each, index): Row[] => {
            if (index === at && change.kind === 'fewer') return [];
            if (index === at && change.kind === 'smaller' && change.side === 'length')
              return [{ ...each, lengthMm: each.lengthMm - change.byMm }];
            if (index === at && change.kind === 'smaller')
              return [{ ...each, widthMm: each.widthMm - change.byMm }];
            const freed = change.kind === 'grain' && change.partIds.includes(String(index + 1));
            return [freed ? { ...each, grain: 'free' } : each];
          });
          expect(least(varied, change.kind === 'kerf' ? change.kerfMm : 3)).toBeLessThanOrEqual(
            after.costMinor ?? 0,
          );
        }
      }),
      { numRuns: 80, seed: 5 },
    );
    expect(stated).toBeGreaterThan(30);
  }, 120_000);
});

describe('the subject of advice', () => {
  it('is another when rows are joined otherwise or other parts may turn, and the same under other names', () => {
    const base = cuttingProject([sheet], [row(625, 1250, 2), row(625, 1250, 2)]);
    const hash = subjectOf(base).hash;
    const joined = cuttingProject([sheet], [row(625, 1250, 3), row(625, 1250, 1)]);
    expect(subjectOf(joined).hash).not.toBe(hash);
    expect(subjectOf(withRows(base, () => ({ showRecipeId: 'clear' }))).hash).not.toBe(hash);
    expect(subjectOf(withRows(base, () => ({ name: 'Other' }))).hash).toBe(hash);
    expect(subjectOf(withRows(base, () => ({ name: 'Back' }))).hash).toBe(hash);
  });
});

describe('a sentence of advice', () => {
  const { settings } = cuttingProject([sheet], []).input;
  const words = {
    settings,
    kind: 'sheet',
    partName: (part: string) => `Part ${part}`,
    packLabel: (pack: string) => `size ${pack}`,
  } as const;
  const before = { stocks: 4, costMinor: 24_000 };
  const after = { stocks: 3, costMinor: 18_000 };

  it('names the change and the numbers before and after', () => {
    const say = (change: CuttingAdvice['change'], end: CuttingAdvice['after'] = after) =>
      adviceSentence({ change, before, after: end }, words);
    const saving = '3 sheets in place of 4, for €180.00 in place of €240.00.';
    expect(say({ kind: 'smaller', partId: '1', side: 'length', byMm: 3 })).toBe(
      `“Part 1” 3 mm shorter: ${saving}`,
    );
    expect(say({ kind: 'smaller', partId: '1', side: 'width', byMm: 3 })).toContain('3 mm narrower');
    expect(say({ kind: 'fewer', partId: '2' })).toBe(`One “Part 2” fewer: ${saving}`);
    expect(say({ kind: 'kerf', kerfMm: 2.4 })).toBe(`A saw cut of 2.4 mm in place of 3 mm: ${saving}`);
    expect(say({ kind: 'grain', partIds: ['1', '2', '3'] })).toContain(
      '“Part 1”, “Part 2” and “Part 3” with the grain either way',
    );
    expect(say({ kind: 'size', packId: 'a' }, { stocks: 1, costMinor: 30_000 })).toBe(
      'size a alone: 1 sheet for €300.00; this plan takes 4 for €240.00.',
    );
    expect(say({ kind: 'fewer', partId: '2' }, { stocks: 4, costMinor: 20_000 })).toContain(
      'the same 4 sheets, for €200.00',
    );
    expect(say({ kind: 'fewer', partId: '2' }, { stocks: 3, costMinor: null })).toBe(
      'One “Part 2” fewer: 3 sheets in place of 4.',
    );
  });
});
