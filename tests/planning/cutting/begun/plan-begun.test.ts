import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  keptFrom,
  layoutKeptFrom,
  sheetKeptFrom,
} from '../../../../server/planning/cutting/begun/kept-from.ts';
import { keptOffcuts } from '../../../../server/planning/cutting/begun/kept-offcuts.ts';
import { layoutKey } from '../../../../server/planning/cutting/layout-key.ts';
import { planMaterials } from '../../../../server/planning/cutting/plan-materials.ts';
import type { MaterialPlan } from '../../../../server/planning/plan-output.ts';
import type { BegunPlan } from '../../../../server/planning/project-input.ts';
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

const sheet = sheetProduct([{ lengthMm: 2500, widthMm: 1250, price: 6000 }]);

function planned(project: CuttingProject, begun?: BegunPlan): MaterialPlan {
  const input = begun === undefined ? project.input : { ...project.input, begunPlans: [begun] };
  const [material] = planMaterials(input, project.parts).materials;
  if (material === undefined) throw new Error('nothing was planned');
  return material;
}

/** The plan as begun, with so many sheets of each layout ticked. */
function begin(plan: MaterialPlan, kerfMm: number, begun: readonly number[]): BegunPlan {
  return {
    materialId: plan.id,
    layouts: plan.layouts.map((layout, index) => ({
      key: layoutKey(plan.id, layout, kerfMm),
      begun: begun[index] ?? 0,
      layout,
    })),
  };
}

function checked(project: CuttingProject, begun: BegunPlan): MaterialPlan {
  const plan = planned(project, begun);
  const { kerfMm } = project.input.settings;
  const onHand = new Map(project.input.onHand.map(({ id, count }) => [id, count]));
  expect(brokenRules(plan, { kerfMm, trimMm: 0, demands: project.demands, onHand })).toEqual([]);
  return plan;
}

/** Three of 1240 x 610 in two rows of two, 2483 x 1223 of 2500 x 1250, leave the place of a fourth. */
const three: Row = row(1240, 610, 3);
const offcut = { lengthMm: 1240, widthMm: 610 };

function keptOf(begun: BegunPlan) {
  const from = keptFrom(begun.layouts[0]?.key ?? '', 0, offcut.lengthMm, offcut.widthMm);
  return { id: '9', productId: 'birch-18', amount: 1, count: 1, ...offcut, keptFrom: from };
}

describe('a plan that is being cut', () => {
  const before = planned(cuttingProject([sheet], [three]));
  const begun = begin(before, 3, [1]);

  it('stays as it is while it cuts what is asked for, though an offcut of it is on hand', () => {
    expect(keptOffcuts(before.layouts[0] as never, 'sheet')).toContainEqual({ ...offcut, count: 1 });
    const project = cuttingProject([sheet], [three], { onHand: [keptOf(begun)] });
    const plan = checked(project, begun);
    expect(plan.layouts).toEqual(before.layouts);
    expect([plan.stocks.value, plan.costMinor.value, plan.proven]).toEqual([1, 6000, true]);
    expect(plan.stocks.working.notes?.join()).toContain('1 sheets of them are being cut');
    // The same offcut from elsewhere is stock like any other; the plan is kept even so.
    const other = { ...keptOf(begun), keptFrom: '' };
    expect(checked(cuttingProject([sheet], [three], { onHand: [other] }), begun).layouts).toEqual(
      before.layouts,
    );
  });

  it('cuts what comes on top from the offcut kept, and only from one that was', () => {
    const rows = [three, row(1200, 600)];
    const withIt = checked(cuttingProject([sheet], rows, { onHand: [keptOf(begun)] }), begun);
    expect(withIt.layouts.map(({ packId, onHandId }) => [packId, onHandId])).toEqual([
      ['pack-1', null],
      [null, '9'],
    ]);
    expect(withIt.layouts[0]?.cut).toEqual(before.layouts[0]?.cut);
    expect([withIt.stocks.value, withIt.costMinor.value, withIt.proven]).toEqual([1, 6000, true]);
    // Not kept, it stays part of its sheet: what is cut cannot be laid out anew, so another sheet is needed.
    const without = checked(cuttingProject([sheet], rows), begun);
    expect([without.stocks.value, without.costMinor.value]).toEqual([2, 12_000]);
    expect(planned(cuttingProject([sheet], rows)).stocks.value).toBe(1);
  });

  it('keeps only sheets that were begun when the list changes', () => {
    const five = cuttingProject([sheet], [row(1240, 610, 7)]);
    const plan = planned(five);
    expect(plan.stocks.value).toBe(2);
    const more = cuttingProject([sheet], [row(1240, 610, 7), row(1240, 300, 1)]);
    const kept = checked(more, begin(plan, 3, [1, 0]));
    expect(kept.layouts[0]).toEqual(plan.layouts[0]);
    expect(kept.stocks.value).toBe(2);
  });

  it.each([
    ['a part of it has another size', [row(1240, 609, 3)], {}],
    ['fewer of its parts are asked for', [row(1240, 610, 2)], {}],
    ['the grain of its parts is another', [row(1240, 610, 3, 'across')], {}],
    ['the saw kerf is another', [three], { settings: { kerfMm: 3.2 } }],
  ] as const)('is no longer kept when %s', (_what, rows, more) => {
    const project = cuttingProject([sheet], rows, more);
    expect(planned(project, begun)).toEqual(planned(project));
  });

  it('is no longer kept when its sheets are not sold any more, or were tampered with', () => {
    const other = cuttingProject(
      [sheetProduct([{ id: 'other', lengthMm: 2500, widthMm: 1250, price: 1 }])],
      [three],
    );
    expect(planned(other, begun)).toEqual(planned(other));
    const project = cuttingProject([sheet], [three]);
    const wrong = { ...begun, layouts: begun.layouts.map((each) => ({ ...each, key: '0' })) };
    expect(planned(project, wrong)).toEqual(planned(project));
  });

  it('holds without the piece on hand that its sheet was cut from', () => {
    const onHand = [{ id: '4', productId: 'birch-18', amount: 1, count: 1, lengthMm: 1300, widthMm: 700 }];
    const first = planned(cuttingProject([sheet], [row(1240, 610)], { onHand }));
    expect(first.layouts.map(({ onHandId }) => onHandId)).toEqual(['4']);
    const gone = planned(cuttingProject([sheet], [row(1240, 610)]), begin(first, 3, [1]));
    expect([gone.stocks.value, gone.layouts]).toEqual([0, first.layouts]);
  });

  it('keeps parts whose grain matches side by side, and lets them go when they no longer match', () => {
    const matched = (rows: readonly Row[], name: string): CuttingProject => {
      const project = cuttingProject([sheet], rows);
      const parts = project.input.parts.map((part, at) => (at < 2 ? { ...part, grainMatch: name } : part));
      return { ...project, input: { ...project.input, parts } };
    };
    const fronts = [row(600, 180), row(600, 200)];
    const first = planned(matched(fronts, 'fronts'));
    const begunFronts = begin(first, 3, [1]);
    expect(checked(matched(fronts, 'fronts'), begunFronts).layouts).toEqual(first.layouts);
    const more = checked(matched([...fronts, row(500, 300)], 'fronts'), begunFronts);
    expect([more.layouts[0]?.cut, more.stocks.value]).toEqual([first.layouts[0]?.cut, 2]);
    expect(checked(matched([...fronts, row(500, 300)], ''), begunFronts).stocks.value).toBe(1);
  });

  it('keeps boards that are cut to length, too', () => {
    const board = boardProduct(89, [{ lengthMm: 2400, price: 600 }]);
    const first = planned(cuttingProject([board], [row(1000, 89, 2)]));
    const longer = cuttingProject([board], [row(1000, 89, 2), row(390, 89, 2)]);
    const plan = checked(longer, begin(first, 3, [1]));
    // 2 x 1000 + 2 x 3 leave 394, enough for one; the board is begun, so both come from another.
    expect(plan.layouts[0]?.cut).toEqual(first.layouts[0]?.cut);
    expect(plan.stocks.value).toBe(2);
  });
});

describe('whatever was begun and changed', () => {
  it('the plan can be cut, cuts what is asked for, and its bound is no more than its cost', () => {
    fc.assert(
      fc.property(
        fc.oneof(sheetProjects, boardProjects),
        fc.array(fc.nat(3), { minLength: 12, maxLength: 12 }),
        fc.array(fc.integer({ min: -1, max: 2 }), { minLength: 1, maxLength: 12 }),
        (project, sheets, changes) => {
          const before = planned(project);
          const { kerfMm, sheetTrimMm } = project.input.settings;
          const begun = begin(before, kerfMm, sheets);
          const parts = project.parts.map((part, index) => {
            const count = Math.max(0, Number(part.quantity.value) + (changes[index % changes.length] ?? 0));
            return { ...part, quantity: { ...part.quantity, value: count } };
          });
          const demands = project.demands.map((demand, index) => ({
            ...demand,
            count: Number(parts[index]?.quantity.value),
          }));
          const input = { ...project.input, begunPlans: [begun] };
          const [plan] = planMaterials(input, parts).materials;
          if (plan === undefined) throw new Error('nothing was planned');
          const onHand = new Map(input.onHand.map(({ id, count }) => [id, count]));
          const trimMm = plan.kind === 'sheet' ? sheetTrimMm : 0;
          expect(brokenRules(plan, { kerfMm, trimMm, demands, onHand })).toEqual([]);
          expect(Number(plan.boundStocks.value)).toBeLessThanOrEqual(Number(plan.stocks.value));
          expect(new Set(plan.layouts.map((each) => layoutKey(plan.id, each, kerfMm))).size).toBe(
            plan.layouts.length,
          );
          // Sheets begun are there as far as all their parts are still asked for.
          if (changes.every((change) => change >= 0))
            for (const { key, begun: count, layout } of begun.layouts) {
              const now = plan.layouts.find((each) => layoutKey(plan.id, each, kerfMm) === key);
              expect(now?.count ?? 0).toBeGreaterThanOrEqual(Math.min(count, layout.count));
            }
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe('the name of the sheet an offcut came from', () => {
  it('begins with the layout, and is empty for other stock', () => {
    const name = keptFrom('0123456789abcdef', 2, 800.5, 300);
    expect(name).toBe('0123456789abcdef 2 800.5x300');
    expect([layoutKeptFrom(name), layoutKeptFrom('')]).toEqual(['0123456789abcdef', '']);
    expect([sheetKeptFrom(name), sheetKeptFrom('')]).toEqual(['0123456789abcdef 2', '']);
  });
});
