import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planMaterials } from '../../../server/planning/cutting/plan-materials.ts';
import type { CutNode, MaterialPlan } from '../../../server/planning/plan-output.ts';
import { brokenRules } from './check-layout.ts';
import {
  boardProduct,
  type CuttingProject,
  cuttingProject,
  row,
  sheetProduct,
  withUnknown,
} from './cutting-project.ts';

function planned(project: CuttingProject): MaterialPlan {
  const [first] = planMaterials(project.input, project.parts).materials;
  if (first === undefined) throw new Error('no material was planned');
  return first;
}

function checked(project: CuttingProject): MaterialPlan {
  const plan = planned(project);
  const { kerfMm, sheetTrimMm } = project.input.settings;
  const rules = {
    kerfMm,
    trimMm: plan.kind === 'sheet' ? sheetTrimMm : 0,
    demands: project.demands,
    onHand: new Map(project.input.onHand.map(({ id, count }) => [id, count])),
  };
  expect(brokenRules(plan, rules)).toEqual([]);
  return plan;
}

const sheet = sheetProduct([{ lengthMm: 2440, widthMm: 1220, price: 8000 }]);
const offcut = { id: '7', productId: 'birch-18', amount: 1, count: 1, lengthMm: 900, widthMm: 700 };

describe('planMaterials on sheets', () => {
  it('lays parts that fill a sheet exactly, kerfs included, on one sheet and proves it', () => {
    // By hand: 2 x 1218.5 + 3 = 2440 along, 2 x 608.5 + 3 = 1220 across.
    const plan = checked(cuttingProject([sheet], [row(1218.5, 608.5, 4)]));
    expect(plan.stocks.value).toBe(1);
    expect(plan.boundStocks.value).toBe(1);
    expect(plan.proven).toBe(true);
    expect(plan.costMinor.value).toBe(8000);
  });

  it('needs a second sheet when a part is a tenth of a millimetre too long for that', () => {
    const plan = checked(cuttingProject([sheet], [row(1218.6, 608.5, 4)]));
    expect(plan.stocks.value).toBe(2);
    expect(plan.proven).toBe(true);
  });

  it('counts equal sheets once', () => {
    const plan = checked(cuttingProject([sheet], [row(1218.5, 608.5, 12)]));
    expect(plan.layouts.map(({ count }) => count)).toEqual([3]);
  });

  it('keeps the grain: along lies plain, across lies turned, free may turn', () => {
    // 1300 is more than the sheet is wide, so only the free one may lie across.
    const project = cuttingProject(
      [sheet],
      [row(1300, 300), row(700, 1300, 1, 'across'), row(500, 2300, 1, 'free')],
    );
    const turned = new Map<string, boolean>();
    const visit = (node: CutNode): void => {
      if (node.type === 'split') node.children.forEach(visit);
      if (node.type === 'part') turned.set(node.partId, node.turned);
    };
    for (const layout of checked(project).layouts) visit(layout.cut);
    expect(turned).toEqual(
      new Map([
        ['1', false],
        ['2', true],
        ['3', true],
      ]),
    );
  });

  it('trims full sheets on every side, but not pieces on hand', () => {
    // 900 x 700 fills the piece on hand to the edge; a second one must come from a sheet.
    const project = cuttingProject([sheet], [row(900, 700, 2)], {
      settings: { sheetTrimMm: 10 },
      onHand: [offcut],
    });
    const plan = checked(project);
    expect(plan.stocks.value).toBe(1);
    expect(plan.layouts.map(({ onHandId }) => onHandId)).toEqual(['7', null]);
    const [, bought] = plan.layouts;
    expect([bought?.cut.lengthMm, bought?.cut.widthMm]).toEqual([2420, 1200]);
  });

  it('takes what is on hand before buying', () => {
    const plan = checked(cuttingProject([sheet], [row(800, 600)], { onHand: [offcut] }));
    expect(plan.stocks.value).toBe(0);
    expect(plan.costMinor.value).toBe(0);
    expect(plan.proven).toBe(true);
  });

  it('gathers what is left of the last sheet in one large offcut', () => {
    // By hand: two of 500 x 500 one above the other leave 2440 - 500 - 3 = 1937 x 1220; side by side only 1434 x 1220.
    const [layout] = checked(cuttingProject([sheet], [row(500, 500, 2)])).layouts;
    const cut = layout?.cut.type === 'split' ? layout.cut.children : [];
    expect(cut.filter(({ type }) => type === 'offcut')).toEqual([
      { type: 'offcut', lengthMm: 1937, widthMm: 1220 },
    ]);
  });

  it('buys the size that costs least', () => {
    const two = sheetProduct([
      { lengthMm: 2440, widthMm: 1220, price: 8000 },
      { lengthMm: 1220, widthMm: 1220, price: 4500 },
    ]);
    expect(checked(cuttingProject([two], [row(1000, 1000)])).costMinor.value).toBe(4500);
    // Two of 1000 x 1000: one full sheet for 8000, not two halves for 9000.
    expect(checked(cuttingProject([two], [row(1000, 1000, 2)])).costMinor.value).toBe(8000);
    // Three: a full and a half sheet for 12500.
    const three = checked(cuttingProject([two], [row(1000, 1000, 3)]));
    expect(three.costMinor.value).toBe(12500);
    expect(three.proven).toBe(true);
  });

  it('uses the packs of the project currency only', () => {
    const mixed = sheetProduct([
      { lengthMm: 2440, widthMm: 1220, price: 8000 },
      { lengthMm: 2440, widthMm: 1220, price: 10, currency: 'USD' },
    ]);
    expect(checked(cuttingProject([mixed], [row(1000, 1000)])).costMinor.value).toBe(8000);
  });

  it('adds up area and says what was left out', () => {
    const project = cuttingProject([sheet], [row(1000, 500, 3), row(400, 300, 2)]);
    const unknown = {
      ...project,
      parts: [project.parts[0], withUnknown(project.parts[1] as never, 'cutLengthMm')],
    };
    const { materials } = planMaterials(unknown.input, unknown.parts as never);
    // 3 x 1.0 x 0.5 = 1.5 m2; the second row is not known.
    expect(materials[0]?.netM2.value).toBeCloseTo(1.5, 12);
    expect(materials[0]?.netM2.working.notes?.join()).toContain('1 rows');
    expect(materials[0]?.stocks.value).toBe(1);
    expect(materials[0]?.thicknessMm.value).toBe(17.6);
  });

  it('plans nothing for a quantity of nought, and nothing without parts', () => {
    const none = planned(cuttingProject([sheet], [row(1000, 500, 0)]));
    expect([none.stocks.value, none.costMinor.value, none.layouts.length]).toEqual([0, 0, 0]);
    expect(planMaterials(cuttingProject([sheet], []).input, [])).toEqual({ materials: [], problems: [] });
  });

  it('gives the same plan for the same parts', () => {
    const rows = Array.from({ length: 30 }, (_, index) => row(300 + 17 * index, 200 + 11 * index, 1, 'free'));
    const project = cuttingProject([sheet], rows);
    expect(planned(project)).toEqual(planned(project));
  });

  it('plans five thousand rows', () => {
    const rows = Array.from({ length: 5000 }, (_, index) =>
      row(200 + ((index * 7919) % 900), 120 + ((index * 104729) % 300), 1 + (index % 4), 'free'),
    );
    const project = cuttingProject([sheet], rows);
    const plan = planned(project);
    const cut = plan.layouts.reduce((sum, layout) => sum + layout.count * countParts(layout.cut), 0);
    expect(cut).toBe(project.demands.reduce((sum, { count }) => sum + count, 0));
    expect(Number(plan.stocks.value)).toBeLessThan(1.1 * Number(plan.boundStocks.value));
  });
});

function countParts(node: CutNode): number {
  if (node.type === 'split') return node.children.reduce((sum, child) => sum + countParts(child), 0);
  return node.type === 'part' ? 1 : 0;
}

describe('planMaterials on boards', () => {
  const board = boardProduct(89, [
    { lengthMm: 2400, price: 600 },
    { lengthMm: 3600, price: 1000 },
  ]);

  it('cuts parts to length, kerf between, from the cheapest mix of lengths', () => {
    // Four of 597.75 and three kerfs of 3 fill 2400 exactly.
    const plan = checked(cuttingProject([board], [row(597.75, 89, 4)]));
    expect([plan.kind, plan.stocks.value, plan.costMinor.value, plan.proven]).toEqual([
      'board',
      1,
      600,
      true,
    ]);
    expect(plan.netM.value).toBeCloseTo(2.391, 9);
    // Three of 1190: two in a 2400 and one in another for 1200, or all in one 3600 for 1000.
    expect(checked(cuttingProject([board], [row(1190, 89, 3)])).costMinor.value).toBe(1000);
  });

  it('takes a part within half a millimetre of the board width as it comes', () => {
    const project = cuttingProject([board], [row(1000, 89.5, 2)]);
    const plan = planned(project);
    const demands = project.demands.map((demand) => ({ ...demand, widthMm: 89 }));
    expect(brokenRules(plan, { kerfMm: 3, trimMm: 0, demands })).toEqual([]);
    expect(plan.stocks.value).toBe(1);
  });

  it('rips narrower parts and shows the cuts', () => {
    // Two strips of 43 and a kerf of 3 make 89.
    const plan = checked(cuttingProject([board], [row(2400, 43, 2)]));
    expect(plan.stocks.value).toBe(1);
  });

  it('refuses a part wider than the board and still cuts the others', () => {
    const project = cuttingProject([board], [row(1000, 90), row(1000, 89)]);
    const { materials, problems } = planMaterials(project.input, project.parts);
    expect(problems.map(({ code, at }) => [code, at.table, at.id, at.field])).toEqual([
      ['part-larger-than-board', 'parts', '1', 'width'],
    ]);
    expect(materials[0]?.stocks.value).toBe(1);
  });

  it('says when the board width is not known', () => {
    const project = cuttingProject([boardProduct(null, [{ lengthMm: 2400 }])], [row(1000, 89)]);
    const { materials, problems } = planMaterials(project.input, project.parts);
    expect(problems.map(({ code, at }) => [code, at.id, at.field])).toEqual([
      ['sheet-size-unknown', 'pine-1x4', 'width'],
    ]);
    expect(materials[0]?.stocks.value).toBeNull();
  });
});

describe('planMaterials finds problems and plans the rest', () => {
  function problemsOf(project: CuttingProject): unknown[] {
    return planMaterials(project.input, project.parts).problems.map(({ code, severity, at }) => [
      code,
      severity,
      at.table,
      at.id,
      at.field,
    ]);
  }

  it('names the part that no sheet holds, the cell at fault, and what would fit', () => {
    const project = cuttingProject([sheet], [row(2500, 600), row(1000, 1300), row(500, 500)]);
    const { materials, problems } = planMaterials(project.input, project.parts);
    expect(problems.map(({ code, at }) => [code, at.id, at.field])).toEqual([
      ['part-larger-than-sheet', '1', 'length'],
      ['part-larger-than-sheet', '2', 'width'],
    ]);
    expect(problems[0]?.message).toContain('2500');
    expect(problems[0]?.message).toContain('2440');
    expect(problems[0]?.wayOut).toContain('2440');
    expect(problems[1]?.wayOut).toContain('free');
    expect(materials[0]?.stocks.value).toBe(1);
  });

  it('asks for the grain direction when a part laid across is too long', () => {
    const across = cuttingProject([sheet], [row(1300, 500, 1, 'across')]);
    expect(problemsOf(across)).toEqual([['part-larger-than-sheet', 'error', 'parts', '1', 'length']]);
  });

  it('asks for a sheet size', () => {
    expect(problemsOf(cuttingProject([sheetProduct([])], [row(500, 500)]))).toEqual([
      ['sheet-size-unknown', 'error', 'products', 'birch-18', 'packs'],
    ]);
  });

  it('counts sheets without a price, and leaves the cost open', () => {
    for (const [pack, code] of [
      [{ price: null }, 'price-missing'],
      [{ price: 10, currency: 'USD' }, 'price-currency-missing'],
    ] as const) {
      const project = cuttingProject(
        [sheetProduct([{ lengthMm: 2440, widthMm: 1220, ...pack }])],
        [row(500, 500)],
      );
      expect(problemsOf(project)).toEqual([[code, 'warning', 'products', 'birch-18', 'packs']]);
      const plan = checked(project);
      expect([plan.stocks.value, plan.costMinor.value, plan.proven]).toEqual([1, null, true]);
    }
  });

  it('leaves the plan open when kerf or trim cannot be used', () => {
    for (const bad of [-1, Number.NaN, 21]) {
      const project = cuttingProject([sheet], [row(500, 500)], { settings: { kerfMm: bad } });
      expect(problemsOf(project)).toEqual([['kerf-invalid', 'error', 'settings', null, 'kerfMm']]);
      expect(planned(project).stocks.value).toBeNull();
      expect(planned(project).netM2.value).toBeCloseTo(0.25, 12);
    }
    const trim = cuttingProject([sheet], [row(500, 500)], { settings: { sheetTrimMm: -1 } });
    expect(problemsOf(trim)).toEqual([['setting-invalid', 'error', 'settings', null, 'sheetTrimMm']]);
  });

  it('names a part no wider than the saw cut, and plans it and the rest all the same', () => {
    const project = cuttingProject([sheet], [row(600, 3), row(2, 400), row(600, 3.5)]);
    expect(problemsOf(project)).toEqual([
      ['part-narrower-than-kerf', 'warning', 'parts', '1', 'width'],
      ['part-narrower-than-kerf', 'warning', 'parts', '2', 'length'],
    ]);
    expect(checked(project).stocks.value).toBe(1);
    expect(problemsOf(cuttingProject([sheet], [row(600, 3)], { settings: { kerfMm: 0 } }))).toEqual([]);
  });

  it('says when the trim leaves nothing of any sheet', () => {
    const project = cuttingProject([sheet], [row(500, 500)], { settings: { sheetTrimMm: 610 } });
    expect(problemsOf(project)).toEqual([['setting-invalid', 'error', 'settings', null, 'sheetTrimMm']]);
    const { problems } = planMaterials(project.input, project.parts);
    expect(problems[0]?.message).toContain('610 mm on every side leaves nothing of Birch plywood 18 mm');
    // 1220 - 2 x 609 = 2 mm are left, too little for the part, and that is said of the part.
    const little = cuttingProject([sheet], [row(500, 500)], { settings: { sheetTrimMm: 609 } });
    expect(problemsOf(little)).toEqual([['part-larger-than-sheet', 'error', 'parts', '1', 'width']]);
  });

  it('cuts nothing from a row of none on hand, nor from sheets without a size while another has one', () => {
    const none = cuttingProject([sheet], [row(800, 600)], { onHand: [{ ...offcut, count: 0 }] });
    expect([problemsOf(none), checked(none).stocks.value]).toEqual([[], 1]);
    const flat = sheetProduct([
      { lengthMm: 0, widthMm: 1220, price: 10 },
      { lengthMm: 2440, widthMm: 1220, price: 8000 },
    ]);
    const sized = cuttingProject([flat], [row(800, 600)]);
    expect([problemsOf(sized), checked(sized).costMinor.value]).toEqual([[], 8000]);
    expect(problemsOf(cuttingProject([sheetProduct([{ lengthMm: 0, widthMm: 0 }])], [row(9, 9)]))).toEqual([
      ['sheet-size-unknown', 'error', 'products', 'birch-18', 'packs'],
    ]);
  });

  it('plans one material when the other has no size', () => {
    const project = cuttingProject([sheet, sheetProduct([], 'mdf-18')], [row(500, 500)]);
    const other = cuttingProject([sheetProduct([], 'mdf-18')], [row(500, 500)]);
    const input = {
      ...project.input,
      parts: [...project.input.parts, ...other.input.parts.map((part) => ({ ...part, id: '2' }))],
    };
    const parts = [...project.parts, ...other.parts.map((part) => ({ ...part, id: '2' }))];
    const { materials, problems } = planMaterials(input, parts);
    expect(materials.map(({ id, stocks }) => [id, stocks.value])).toEqual([
      ['birch-18', 1],
      ['mdf-18', null],
    ]);
    expect(problems.map(({ code, at }) => [code, at.id])).toEqual([['sheet-size-unknown', 'mdf-18']]);
  });

  it('asks for the size of a piece on hand that has none', () => {
    const project = cuttingProject([sheet], [row(500, 500)], { onHand: [{ ...offcut, lengthMm: null }] });
    expect(problemsOf(project)).toEqual([['on-hand-invalid', 'warning', 'onHand', '7', 'lengthMm']]);
  });
});

describe('every plan can be cut', () => {
  const size = (most: number) => fc.integer({ min: 20, max: most * 2 }).map((half) => half / 2);
  const rows = fc.array(
    fc.record({
      lengthMm: size(1200),
      widthMm: size(1000),
      count: fc.integer({ min: 1, max: 4 }),
      grain: fc.constantFrom('along' as const, 'across' as const, 'free' as const),
    }),
    { minLength: 1, maxLength: 25 },
  );
  const settings = fc.record({
    kerfMm: fc.constantFrom(0, 1.6, 3, 3.175, 4),
    sheetTrimMm: fc.constantFrom(0, 5, 12.7),
  });

  it('whatever the parts, kerf, trim, sizes and offcuts', () => {
    fc.assert(
      fc.property(rows, settings, fc.boolean(), fc.boolean(), (jobRows, jobSettings, second, hand) => {
        const product = sheetProduct([
          { lengthMm: 2500, widthMm: 1250, price: 8000 },
          ...(second ? [{ lengthMm: 1525, widthMm: 1525, price: 6500 }] : []),
        ]);
        const project = cuttingProject([product], jobRows, {
          settings: jobSettings,
          onHand: hand ? [{ ...offcut, count: 2 }] : [],
        });
        const plan = checked(project);
        expect(Number(plan.stocks.value)).toBeGreaterThanOrEqual(Number(plan.boundStocks.value));
      }),
      { numRuns: 60 },
    );
  });

  it('in strips too, when the list is long', () => {
    fc.assert(
      fc.property(rows, settings, (jobRows, jobSettings) => {
        const many = jobRows.map((each) => ({ ...each, count: each.count * 40 }));
        const product = sheetProduct([{ lengthMm: 2500, widthMm: 1250, price: 8000 }]);
        checked(cuttingProject([product], many, { settings: jobSettings, onHand: [offcut] }));
      }),
      { numRuns: 15 },
    );
  });
});
