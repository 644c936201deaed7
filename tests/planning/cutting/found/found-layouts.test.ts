import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AskedQuestion,
  cuttingQuestion,
} from '../../../../server/planning/cutting/found/cutting-question.ts';
import { foundFault } from '../../../../server/planning/cutting/found/found-fault.ts';
import { foundFromLayouts } from '../../../../server/planning/cutting/found/found-from-layouts.ts';
import { foundLayouts } from '../../../../server/planning/cutting/found/found-layouts.ts';
import { foundCost, withFound } from '../../../../server/planning/cutting/found/with-found.ts';
import type { LaidBlanks } from '../../../../server/planning/cutting/laid-blanks.ts';
import { largestOffcutMm2 } from '../../../../server/planning/cutting/largest-offcut.ts';
import { materialBlanks } from '../../../../server/planning/cutting/material-blanks.ts';
import { type MaterialJob, materialJob } from '../../../../server/planning/cutting/material-job.ts';
import { planMaterials } from '../../../../server/planning/cutting/plan-materials.ts';
import type { MaterialPlan } from '../../../../server/planning/plan-output.ts';
import type { FoundCut, FoundLayout, FoundSheet } from '../../../../server/planning/project-input.ts';
import { brokenRules } from '../check-layout.ts';
import { type CuttingProject, cuttingProject, row, sheetProduct } from '../cutting-project.ts';
import { boardProjects, sheetProjects } from './random-cutting.ts';

const sheet = sheetProduct([{ lengthMm: 2500, widthMm: 1250, price: 6000 }]);

function asked(project: CuttingProject): AskedQuestion {
  const found = cuttingQuestion(project.input, project.parts, project.input.catalogue.products[0]?.id ?? '');
  if (found === null) throw new Error('nothing is asked');
  return found;
}

function planned(project: CuttingProject, found?: FoundLayout): MaterialPlan {
  const input = found === undefined ? project.input : { ...project.input, foundLayouts: [found] };
  const [material] = planMaterials(input, project.parts).materials;
  if (material === undefined) throw new Error('nothing was planned');
  return material;
}

function answer(project: CuttingProject, sheets: readonly FoundSheet[], bound = 0): FoundLayout {
  return { question: asked(project).question.hash, sheets, boundCost: bound, boundStocks: 0 };
}

function rulesOf(project: CuttingProject) {
  const { kerfMm, sheetTrimMm } = project.input.settings;
  const trimMm = project.input.catalogue.products[0]?.kind === 'sheet' ? sheetTrimMm : 0;
  const onHand = new Map(project.input.onHand.map(({ id, count }) => [id, count]));
  return { kerfMm, trimMm, demands: project.demands, onHand };
}

describe('a plan in the terms of its question', () => {
  it('is without fault and comes back as layouts that can be cut at the same cost', () => {
    fc.assert(
      fc.property(fc.oneof(sheetProjects, boardProjects), (project) => {
        const plan = planned(project);
        const question = asked(project);
        const sheets = foundFromLayouts(question, plan.layouts);
        if (sheets === null) throw new Error('the layouts name what the question does not know');
        expect(foundFault(question.question, sheets)).toBe(null);
        expect(foundCost(question.question.job, sheets)).toBe(plan.costMinor.value);
        const layouts = foundLayouts(question, sheets);
        expect(brokenRules({ layouts }, rulesOf(project))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('is not made from layouts of other parts or other stock', () => {
    const project = cuttingProject([sheet], [row(600, 400, 2)]);
    const [layout] = planned(project).layouts;
    if (layout === undefined) throw new Error('no layout');
    expect(foundFromLayouts(asked(project), [{ ...layout, packId: 'gone' }])).toBe(null);
    const cut = { type: 'part', partId: '99', turned: false, lengthMm: 1, widthMm: 1 } as const;
    expect(foundFromLayouts(asked(project), [{ ...layout, cut }])).toBe(null);
  });
});

/**
 * Five parts of 1240 x 610 mm and one of 1250 x 600 on sheets of 2500 x 1250 mm. Two columns of two take 1240 + 3 + 1240
 * = 2483 of 2500 and 610 + 3 + 610 = 1223 of 1250, so that a sheet holds four: two sheets for six.
 */
const six = cuttingProject([sheet], [row(1240, 610, 5), row(1250, 600, 1)]);
const small: FoundCut = { piece: 1, turned: false };
const large: FoundCut = { piece: 0, turned: false };
const four: FoundCut = {
  along: 'length',
  cuts: [
    { along: 'width', cuts: [small, small] },
    { along: 'width', cuts: [small, small] },
  ],
};
const two: FoundCut = { along: 'width', cuts: [small, large] };
const twoSheets: readonly FoundSheet[] = [
  { stock: 0, count: 1, cut: four },
  { stock: 0, count: 1, cut: two },
];
/** The same six, three to a sheet. */
const scattered: readonly FoundSheet[] = [
  { stock: 0, count: 1, cut: { along: 'length', cuts: [{ along: 'width', cuts: [small, small] }, small] } },
  { stock: 0, count: 1, cut: { along: 'length', cuts: [{ along: 'width', cuts: [large, small] }, small] } },
];
const threeSheets: readonly FoundSheet[] = [
  { stock: 0, count: 2, cut: { along: 'length', cuts: [small, small] } },
  { stock: 0, count: 1, cut: two },
];

/** A plan as if just made, with bounds that prove nothing. */
function laid(question: AskedQuestion, sheets: readonly FoundSheet[]): LaidBlanks {
  const cost = foundCost(question.question.job, sheets);
  return { layouts: foundLayouts(question, sheets), cost, boundCost: 0, boundStocks: 0, netM2: 4.5 };
}

function jobOf(project: CuttingProject): MaterialJob {
  const [material] = materialBlanks(project.input, project.parts);
  const { job } = material === undefined ? { job: null } : materialJob(material, project.input);
  if (job === null) throw new Error('there is no job');
  return job;
}

describe('a found plan', () => {
  it('is taken where it costs less, or as much and leaves a larger offcut, and else not', () => {
    const question = asked(six);
    const found = [answer(six, twoSheets)];
    for (const sheets of [twoSheets, scattered, threeSheets])
      expect(foundFault(question.question, sheets)).toBe(null);
    const better = (made: readonly FoundSheet[], foundOnes: readonly FoundLayout[]) =>
      withFound(laid(question, made), jobOf(six), 3, foundOnes);
    expect([better(threeSheets, found).cost, better(threeSheets, []).cost]).toEqual([12_000, 18_000]);
    // One above the other leave 2500 - 1250 - 3 = 1247 mm over the full width; three on each sheet leave less.
    expect(largestOffcutMm2(better(scattered, found).layouts)).toBe(1247 * 1250);
    expect(better(scattered, found).cost).toBe(12_000);
    const kept = better(twoSheets, [answer(six, scattered)]);
    expect(kept.layouts).toEqual(laid(question, twoSheets).layouts);
    expect(better(twoSheets, [answer(six, threeSheets)]).cost).toBe(12_000);
  });

  it('proves the plan where its bound meets the cost', () => {
    const made = laid(asked(six), twoSheets);
    const known = withFound(made, jobOf(six), 3, [{ ...answer(six, twoSheets, 12_000), boundStocks: 2 }]);
    expect([made.boundCost, made.boundStocks]).toEqual([0, 0]);
    expect([known.boundCost, known.boundStocks]).toEqual([12_000, 2]);
    expect(planned(six, answer(six, twoSheets, 12_000)).proven).toBe(true);
    expect([made.boundRaised, known.boundRaised]).toEqual([undefined, true]);
  });

  it.each([
    [
      'a piece too few',
      [
        { stock: 0, count: 1, cut: four },
        { stock: 0, count: 1, cut: large },
      ],
      /piece 1 is cut 4 times, not 5/,
    ],
    ['a piece too many', [...twoSheets, { stock: 0, count: 1, cut: small }], /cut 6 times, not 5/],
    [
      'pieces that do not fit',
      [{ stock: 0, count: 1, cut: { along: 'length', cuts: [four, two] } }],
      /do not fit/,
    ],
    [
      'a turned piece with grain',
      [
        { stock: 0, count: 1, cut: four },
        { stock: 0, count: 1, cut: { along: 'length', cuts: [{ piece: 1, turned: true }, large] } },
      ],
      /may not be/,
    ],
    ['a stock there is not', [{ stock: 4, count: 1, cut: four }], /no stock 4/],
    ['a piece there is not', [{ stock: 0, count: 1, cut: { piece: 9, turned: false } }], /no piece 9/],
    ['a count that is none', [{ stock: 0, count: 0.5, cut: four }], /0.5 times/],
    ['a cut that makes nothing', [{ stock: 0, count: 1, cut: { along: 'length', cuts: [] } }], /nothing/],
  ] as const)('with %s is refused, and the plan stays as it was', (_what, sheets, words) => {
    const question = asked(six).question;
    expect(foundFault(question, sheets as readonly FoundSheet[])).toMatch(words);
    expect(planned(six, answer(six, sheets as readonly FoundSheet[]))).toEqual(planned(six));
  });

  it('from fewer stocks than there are is held to what is on hand', () => {
    const onHand = [{ id: '1', productId: 'birch-18', amount: 1, count: 1, lengthMm: 1300, widthMm: 650 }];
    const project = cuttingProject([sheet], [row(1240, 610, 2)], { onHand });
    // The offcut is sorted first; it holds one part, and there is one of it.
    const cut: FoundCut = { piece: 0, turned: false };
    expect(foundFault(asked(project).question, [{ stock: 0, count: 2, cut }])).toMatch(/used 2 times of 1/);
  });

  it('is left alone when it claims a bound above what a plan costs', () => {
    expect(planned(six, answer(six, twoSheets, 12_001))).toEqual(planned(six));
    const claim = { ...answer(six, twoSheets), boundStocks: 3 };
    expect(planned(six, claim)).toEqual(planned(six));
  });

  /** 402 parts of 1200 x 600 on 2500 x 1250: four to a sheet, 100.5 sheets; by threes it takes 134. */
  it('of a long list is taken as it is, without another plan being made, unless something is wrong with it', () => {
    const long = cuttingProject([sheet], [row(1200, 600, 402)]);
    const first: FoundCut = { piece: 0, turned: false };
    const pair: FoundCut = { along: 'width', cuts: [first, first] };
    const byThrees = [{ stock: 0, count: 134, cut: { along: 'length', cuts: [pair, first] } }] as const;
    expect(planned(long).stocks.value).toBe(101);
    const taken = planned(long, { ...answer(long, byThrees, 101 * 6000), boundStocks: 101 });
    expect([taken.stocks.value, taken.boundStocks.value, taken.proven]).toEqual([134, 101, false]);
    expect(taken.layouts.map(({ count }) => count)).toEqual([134]);
    expect(taken.netM2.value).toBeCloseTo(402 * 0.72, 9);
    expect(brokenRules(taken, rulesOf(long))).toEqual([]);
    const short = [{ ...byThrees[0], count: 133 }];
    for (const wrong of [
      answer(long, byThrees, 134 * 6000 + 1),
      { ...answer(long, byThrees), boundStocks: 135 },
      answer(long, short),
      { ...answer(long, byThrees), question: 'other' },
    ])
      expect(planned(long, wrong)).toEqual(planned(long));
  });

  it('answers no other question: another kerf, price, count, grain or sheet', () => {
    const stale = answer(six, twoSheets);
    const others = [
      cuttingProject([sheet], [row(1240, 610, 5), row(1250, 600, 1)], { settings: { kerfMm: 3.2 } }),
      cuttingProject([sheet], [row(1240, 610, 5), row(1250, 600, 1)], { settings: { sheetTrimMm: 1 } }),
      cuttingProject(
        [sheetProduct([{ lengthMm: 2500, widthMm: 1250, price: 6001 }])],
        [row(1240, 610, 5), row(1250, 600, 1)],
      ),
      cuttingProject([sheet], [row(1240, 610, 4), row(1250, 600, 1)]),
      cuttingProject([sheet], [row(1240, 610, 5, 'free'), row(1250, 600, 1)]),
      cuttingProject([sheet], [row(1240, 610.1, 5), row(1250, 600, 1)]),
    ];
    for (const project of others) {
      expect(asked(project).question.hash).not.toBe(stale.question);
      expect(planned(project, stale)).toEqual(planned(project));
    }
  });
});

describe('a cutting question', () => {
  it('is the same whatever the rows are called and however they are ordered or split', () => {
    const { hash } = asked(six).question;
    const again = cuttingProject(
      [
        {
          ...sheet,
          name: 'Other name',
          packs: sheet.packs.map((pack) => ({ ...pack, id: 'z', label: 'z' })),
        },
      ],
      [{ ...row(1250, 600, 1), name: 'last' }, row(1240, 610, 2), row(610, 1240, 3, 'across')],
    );
    expect(asked(again).question.hash).toBe(hash);
    const plan = planned(again, { ...answer(six, twoSheets) });
    expect(brokenRules(plan, rulesOf(again))).toEqual([]);
    expect(largestOffcutMm2(plan.layouts)).toBe(1247 * 1250);
  });

  it('is the same for a free part written either way round', () => {
    const one = cuttingProject([sheet], [row(700, 300, 3, 'free')]);
    const other = cuttingProject([sheet], [row(300, 700, 3, 'free')]);
    expect(asked(one).question.hash).toBe(asked(other).question.hash);
  });

  it('is none without parts, without a size of stock, or with a kerf that cannot be used', () => {
    const none = (project: CuttingProject) =>
      cuttingQuestion(project.input, project.parts, project.input.catalogue.products[0]?.id ?? '');
    expect(none(cuttingProject([sheet], []))).toBe(null);
    expect(none(cuttingProject([sheetProduct([])], [row(600, 400)]))).toBe(null);
    expect(none(cuttingProject([sheet], [row(600, 400)], { settings: { kerfMm: -1 } }))).toBe(null);
    expect(none(cuttingProject([sheet], [row(9600, 400)]))).toBe(null);
  });
});
