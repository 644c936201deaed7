import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planBuying } from '../../../server/planning/buying/plan-buying.ts';
import { type Figure, type FigureUnit, figure } from '../../../server/planning/figure.ts';
import type { BandingPlan, BuyLine, MaterialPlan } from '../../../server/planning/plan-output.ts';
import { COST_CATEGORIES, type ExtraLine, type OnHand } from '../../../server/planning/project-input.ts';
import { BOOKCASE_PRODUCTS, bookcase, planned } from '../finish/bookcase.ts';
import { aPack, aProduct, aProject } from '../finish/sample-project.ts';
import { NO_TERMS } from '../ledger/no-ledger.ts';

const known = (value: number | null, unit: FigureUnit): Figure =>
  figure(value, unit, { rule: 'given', inputs: [] });
const codes = (problems: readonly { readonly code: string; readonly at: object }[]): unknown[] =>
  problems.map(({ code, at }) => [code, ...Object.values(at)]);

const anExtra = (id: string, more: Partial<ExtraLine>): ExtraLine => ({
  id,
  productId: '',
  name: `extra ${id}`,
  category: 'other',
  quantity: 1,
  unitPriceMinor: 1000,
  supplierId: '',
  ...more,
});

const onHand = (id: string, productId: string, amount: number, count = 1): OnHand => ({
  id,
  productId,
  amount,
  count,
  lengthMm: null,
  widthMm: null,
});

/** Products needed by hand-added lines alone, so that a need is the number written in the test. */
function buying(
  needs: readonly (readonly [id: string, amount: number])[],
  more: Parameters<typeof aProject>[0] = {},
  cutting: { readonly banding?: readonly BandingPlan[]; readonly materials?: readonly MaterialPlan[] } = {},
) {
  const extras = needs.map(([productId, quantity], index) =>
    anExtra(String(index + 1), { productId, quantity }),
  );
  const input = aProject({ ...more, extras: [...extras, ...(more.extras ?? [])] });
  const { needs: plans } = planned(input, []);
  const plan = { needs: plans, banding: cutting.banding ?? [], materials: cutting.materials ?? [] };
  const made = planBuying(input, plan);
  return {
    ...made,
    line: (id: string): BuyLine | undefined => made.buy.lines.find((line) => line.id === id),
  };
}

const CANS = [aPack('gallon', 3.785, 5999), aPack('quart', 0.946, 1899)];
const sealer = aProduct('sealer', 'finish', { coverage: 10, shelfLifeOpened: 12 }, { packs: CANS });

describe('a line of the buy list', () => {
  it('is the cheapest packs for need less stock, to the last digit', () => {
    // 4.4 - 0.7 = 3.7 L: a gallon 59.99 (four quarts are 75.96); left over 3.785 + 0.7 - 4.4 = 0.085 L
    const { line, problems } = buying([['sealer', 4.4]], {
      products: [sealer],
      onHand: [onHand('1', 'sealer', 0.35, 2)],
    });
    const sealerLine = line('sealer');
    expect(problems).toEqual([]);
    expect(sealerLine).toMatchObject({ productId: 'sealer', category: 'finish', unit: 'L' });
    expect(sealerLine?.need.value).toBe(4.4);
    expect(sealerLine?.onHand.value).toBe(0.7);
    expect(sealerLine?.toBuy.value).toBeCloseTo(3.7, 12);
    expect(sealerLine?.packs).toEqual([
      { id: 'gallon', label: 'gallon', amount: 3.785, count: 1, priceMinor: 5999, lineMinor: 5999 },
    ]);
    expect(sealerLine?.boughtAmount.value).toBe(3.785);
    expect(sealerLine?.leftover.value).toBeCloseTo(0.085, 12);
    expect(sealerLine?.cost.value).toBe(5999);
    expect(sealerLine?.need.working.inputs[0]?.from).toBe('needs/sealer/need');
  });

  it('shows the fewest packs only where they are fewer than the cheapest', () => {
    // 1.8 L: two quarts 37.98 are cheapest, one gallon 59.99 is fewest
    const { line } = buying([['sealer', 1.8]], { products: [sealer] });
    expect(line('sealer')?.packs.map(({ count, id }) => [count, id])).toEqual([[2, 'quart']]);
    expect(line('sealer')?.fewestPacks.map(({ count, id }) => [count, id])).toEqual([[1, 'gallon']]);
    expect(line('sealer')?.fewestPacksCost.value).toBe(5999);
    // 3.5 L: the gallon is both
    const same = buying([['sealer', 3.5]], { products: [sealer] }).line('sealer');
    expect(same?.fewestPacks).toEqual([]);
    expect(same?.fewestPacksCost.value).toBe(5999);
  });

  it('costs nothing, knowingly, when there is enough on hand', () => {
    const { line, buy, problems } = buying([['sealer', 1]], {
      products: [{ ...sealer, packs: [] }],
      onHand: [onHand('1', 'sealer', 1)],
    });
    expect(line('sealer')?.cost.value).toBe(0);
    expect(line('sealer')?.toBuy.value).toBe(0);
    expect(line('sealer')?.packs).toEqual([]);
    expect(buy.unpricedLines.value).toBe(0);
    expect(problems).toEqual([]);
  });

  it('names the one supplier of its packs, or says that there are several', () => {
    const suppliers = [
      { id: 'north', name: 'the northern yard', leadTimeDays: 3, ...NO_TERMS },
      { id: 'south', name: 'the southern yard', leadTimeDays: null, ...NO_TERMS },
    ];
    const from = (gallon: string, quart: string) =>
      buying([['sealer', 4.4]], {
        suppliers,
        products: [
          {
            ...sealer,
            packs: [
              aPack('gallon', 3.785, 5999, { supplierId: gallon }),
              aPack('quart', 0.946, 1899, { supplierId: quart }),
            ],
          },
        ],
      }).line('sealer');
    expect(from('north', 'north')).toMatchObject({ supplierId: 'north', supplierName: 'the northern yard' });
    expect(from('north', 'south')).toMatchObject({
      supplierId: null,
      supplierName: 'the northern yard, the southern yard',
    });
    expect(from('north', 'south')?.notes.slice(0, 2)).toEqual([
      '1 x gallon from the northern yard.',
      '1 x quart from the southern yard.',
    ]);
  });
});

describe('the notes of a line', () => {
  const stain = aProduct('stain', 'finish', { coverage: 10 }, { choices: { role: 'stain' }, packs: CANS });
  const BATCH = 'More than one can of a colour: ask for one batch, and mix all of them together before use.';

  it('ask for one batch of a colour as soon as there are two cans, the shelf counted', () => {
    const at = (need: number, stock: readonly OnHand[] = []) =>
      buying([['stain', need]], { products: [stain], onHand: stock }).line('stain')?.notes ?? [];
    expect(at(0.9)).not.toContain(BATCH);
    expect(at(1.8)).toContain(BATCH);
    expect(at(1.8, [onHand('1', 'stain', 1)])).toContain(BATCH);
    expect(at(1.8, [onHand('1', 'stain', 1)]).join()).toContain('may be of another batch');
    expect(buying([['sealer', 1.8]], { products: [sealer] }).line('sealer')?.notes).not.toContain(BATCH);
  });

  it('tell how long an opened can keeps when some is left over', () => {
    const notes = buying([['sealer', 0.5]], { products: [sealer] })
      .line('sealer')
      ?.notes.join();
    expect(notes).toContain('keeps about 12 months (label value, typical of the family)');
    const unknown = buying([['stain', 0.5]], { products: [stain] })
      .line('stain')
      ?.notes.join();
    expect(unknown).toContain('is not known');
    const hinge = aProduct('hinge', 'hardware', {}, { packs: [aPack('pair', 2, 400)] });
    expect(buying([['hinge', 3]], { products: [hinge] }).line('hinge')?.notes).toEqual([]);
  });

  it('say what another coverage would take', () => {
    // 4.02 m2, low coverage: varnish 0.8922 L; typical 3 x (4.02 / 13 x 1.05 + 0.02) x 4/5 = 0.827 L, high 0.723 L
    const products = BOOKCASE_PRODUCTS.map((product) =>
      product.id === 'varnish'
        ? {
            ...product,
            packs: [aPack('large', 0.9, 3000), aPack('medium', 0.85, 2500), aPack('small', 0.75, 2000)],
          }
        : product,
    );
    const notesAt = (coverageChoice: 'low' | 'typical' | 'high') => {
      const input = bookcase({ products, settings: { coverageChoice } });
      const { buy } = planBuying(input, { ...planned(input), banding: [], materials: [] });
      return buy.lines.find(({ id }) => id === 'varnish')?.notes.filter((note) => note.includes('coverage'));
    };
    expect(notesAt('low')).toEqual([
      'At typical coverage 1 x medium would do.',
      'At high coverage 1 x small would do.',
    ]);
    expect(notesAt('typical')).toEqual([
      'At low coverage 1 x large would be needed.',
      'At high coverage 1 x small would do.',
    ]);
  });

  it('name both ends in one sentence when they take the same packs', () => {
    const products = BOOKCASE_PRODUCTS.map((product) =>
      product.id === 'varnish'
        ? { ...product, packs: [aPack('large', 2, 3000), aPack('small', 0.85, 2000)] }
        : product,
    );
    const input = bookcase({ products });
    const { buy } = planBuying(input, { ...planned(input), banding: [], materials: [] });
    expect(buy.lines.find(({ id }) => id === 'varnish')?.notes).toContain(
      'At typical or high coverage 1 x small would do.',
    );
  });
});

describe('whole stocks', () => {
  const birch = aProduct('birch', 'sheet', {}, { packs: [aPack('full sheet', 1, 4900)] });
  const sheets = (count: number, fromStock = 0): MaterialPlan => {
    const cut = { type: 'offcut', lengthMm: 2440, widthMm: 1220 } as const;
    const size = { lengthMm: 2440, widthMm: 1220, cut };
    return {
      id: 'birch',
      kind: 'sheet',
      name: 'birch',
      thicknessMm: known(18, 'mm'),
      netM2: known(7, 'm2'),
      netM: known(null, 'm'),
      stocks: known(count, 'pcs'),
      boundStocks: known(count, 'pcs'),
      proven: true,
      costMinor: known(count * 4900, 'minor'),
      layouts: [
        ...(count > 0
          ? [{ id: '1', packId: 'full sheet', onHandId: null, label: 'full sheet', count, ...size }]
          : []),
        ...(fromStock > 0
          ? [{ id: '2', packId: null, onHandId: '9', label: 'offcut', count: fromStock, ...size }]
          : []),
      ],
    };
  };
  const veneer = aProduct(
    'veneer',
    'banding',
    {},
    {
      packs: [aPack('roll 7.5 m', 7.5, 1200), aPack('roll 25 m', 25, 3000)],
    },
  );
  const rolls: BandingPlan = {
    id: 'veneer',
    name: 'veneer',
    strips: known(3, 'pcs'),
    edgeM: known(8.85, 'm'),
    neededM: known(9, 'm'),
    boughtM: known(7.5, 'm'),
    wastedM: known(0.5, 'm'),
    rollsToBuy: known(1, 'pcs'),
    rolls: [
      {
        id: '1',
        packId: 'roll 7.5 m',
        onHandId: null,
        label: 'roll 7.5 m',
        lengthMm: 7500,
        strips: [{ partId: '1', stripId: 'front', lengthMm: 3500, count: 2 }],
        leftMm: 500,
      },
      {
        id: '2',
        packId: null,
        onHandId: '4',
        label: 'leftover',
        lengthMm: 2500,
        strips: [{ partId: '1', stripId: 'front', lengthMm: 2000, count: 1 }],
        leftMm: 500,
      },
    ],
  };

  it('of sheets are bought by the cutting plan: three at 49.00', () => {
    const { line, buy } = buying(
      [],
      { products: [birch], settings: { taxPercent: 8 } },
      { materials: [sheets(3, 1)] },
    );
    expect(line('birch')).toMatchObject({ category: 'sheets', unit: 'pcs', fewestPacks: [] });
    expect(line('birch')?.need.value).toBe(4);
    expect(line('birch')?.onHand.value).toBe(1);
    expect(line('birch')?.toBuy.value).toBe(3);
    expect(line('birch')?.leftover.value).toBe(0);
    expect(line('birch')?.cost.value).toBe(14_700);
    // ourhomefromscratch.com, March 2013: three birch sheets at about 49, with 8 % assumed tax 158.76
    expect(buy.totalMinor.value).toBe(15_876);
  });

  it('of sheets all on hand cost nothing', () => {
    const { line } = buying([], { products: [birch] }, { materials: [sheets(0, 2)] });
    expect(line('birch')?.cost.value).toBe(0);
    expect(line('birch')?.toBuy.value).toBe(0);
  });

  it('are no line at all when nothing is cut from them', () => {
    expect(buying([], { products: [birch] }, { materials: [sheets(0)] }).buy.lines).toEqual([]);
  });

  it('of banding are rolls, less what is cut from leftovers', () => {
    const { line } = buying([], { products: [veneer] }, { banding: [rolls] });
    // 9 m of strips, 2 m of it from a leftover: 7 m from a roll of 7.5 m, 0.5 m left
    expect(line('veneer')?.need.value).toBe(9);
    expect(line('veneer')?.onHand.value).toBe(2);
    expect(line('veneer')?.toBuy.value).toBe(7);
    expect(line('veneer')?.packs.map(({ id, count }) => [id, count])).toEqual([['roll 7.5 m', 1]]);
    expect(line('veneer')?.leftover.value).toBe(0.5);
    expect(line('veneer')?.cost.value).toBe(1200);
    expect(line('veneer')?.need.working.inputs[0]?.from).toBe('banding/veneer/neededM');
  });

  it('of an unknown cutting plan are an unpriced line, not a free one', () => {
    const unknown = { ...rolls, rollsToBuy: known(null, 'pcs'), rolls: [] };
    const { line, buy } = buying([], { products: [veneer] }, { banding: [unknown] });
    expect(line('veneer')?.cost.value).toBeNull();
    expect(buy.unpricedLines.value).toBe(1);
    expect(buy.netMinor.value).toBeNull();
  });

  it('of banding without a price are a problem of the buy list; of sheets it is the cutting plan that reports it', () => {
    const packs = [aPack('roll 7.5 m', 7.5, null)];
    const { line, problems } = buying([], { products: [{ ...veneer, packs }] }, { banding: [rolls] });
    expect(codes(problems)).toEqual([['price-missing', 'products', 'veneer', 'packs']]);
    expect(line('veneer')?.cost.value).toBeNull();
    const euro = [aPack('roll 7.5 m', 7.5, 900, { currency: 'EUR' })];
    const foreign = buying([], { products: [{ ...veneer, packs: euro }] }, { banding: [rolls] });
    expect(codes(foreign.problems)).toEqual([['price-currency-missing', 'products', 'veneer', 'packs']]);
    const sheet = { ...birch, packs: [aPack('full sheet', 1, null)] };
    expect(buying([], { products: [sheet] }, { materials: [sheets(3)] }).problems).toEqual([]);
  });

  it('of banding whose strips fit no roll say so', () => {
    const { line } = buying([], { products: [veneer] }, { banding: [{ ...rolls, neededM: known(20, 'm') }] });
    // 18 m are to come from rolls, and only 7.5 m are bought
    expect(line('veneer')?.notes).toEqual([
      'Some of the need fits none of the lengths sold and is not bought.',
    ]);
    expect(line('veneer')?.leftover.value).toBe(0);
  });

  it('with more added by hand are one line', () => {
    const { line, buy } = buying([['birch', 2]], { products: [birch] }, { materials: [sheets(3, 1)] });
    expect(buy.lines).toHaveLength(1);
    expect(line('birch')?.packs).toEqual([
      { id: 'full sheet', label: 'full sheet', amount: 1, count: 5, priceMinor: 4900, lineMinor: 24_500 },
    ]);
    expect(line('birch')?.need.value).toBe(6); // 3 bought and 1 on hand by the plan, 2 by hand
    expect(line('birch')?.toBuy.value).toBe(5);
    expect(line('birch')?.leftover.value).toBe(0);
  });

  it('without a price in the currency of the project are an unpriced line', () => {
    const dear = { ...birch, packs: [aPack('full sheet', 1, 4900, { currency: 'EUR' })] };
    const { line, buy } = buying([], { products: [dear] }, { materials: [sheets(3)] });
    expect(line('birch')?.cost.value).toBeNull();
    expect(line('birch')?.packs[0]).toMatchObject({ count: 3, priceMinor: null, lineMinor: null });
    expect(buy.unpricedLines.value).toBe(1);
  });

  it('refuse a pack the catalogue does not have', () => {
    expect(() => buying([], { products: [{ ...birch, packs: [] }] }, { materials: [sheets(3)] })).toThrow(
      'full sheet',
    );
  });
});

describe('a free line', () => {
  it('costs quantity times price, a half rounded up', () => {
    const { line } = buying([], {
      extras: [anExtra('7', { quantity: 2.5, unitPriceMinor: 33, category: 'other' })],
    });
    expect(line('extra-7')).toMatchObject({ productId: null, name: 'extra 7', category: 'other', packs: [] });
    expect(line('extra-7')?.cost.value).toBe(83); // 82.5
    expect(line('extra-7')?.toBuy.value).toBe(2.5);
  });

  it('names its supplier', () => {
    const suppliers = [{ id: 'north', name: 'the northern yard', leadTimeDays: 3, ...NO_TERMS }];
    const { line } = buying([], { suppliers, extras: [anExtra('7', { supplierId: 'north' })] });
    expect(line('extra-7')).toMatchObject({ supplierId: 'north', supplierName: 'the northern yard' });
  });

  it.each([
    [{ unitPriceMinor: null }, 'price-missing', 'unitPriceMinor'],
    [{ unitPriceMinor: -5 }, 'extra-invalid', 'unitPriceMinor'],
    [{ unitPriceMinor: 9.5 }, 'extra-invalid', 'unitPriceMinor'],
    [{ quantity: -1 }, 'extra-invalid', 'quantity'],
    [{ quantity: Number.NaN }, 'extra-invalid', 'quantity'],
    [{ quantity: 1e9 }, 'extra-invalid', 'quantity'],
  ] as const)('with %j is %s at its %s, and unpriced', (wrong, code, field) => {
    const { line, buy, problems } = buying([], { extras: [anExtra('7', wrong)] });
    expect(codes(problems)).toEqual([[code, 'extras', '7', field]]);
    expect(line('extra-7')?.cost.value).toBeNull();
    expect(buy.unpricedLines.value).toBe(1);
  });
});

describe('a problem of the buy list', () => {
  it.each([
    [[], 'pack-missing', null],
    [[aPack('quart', 0.946, null)], 'price-missing', 2],
    [[aPack('quart', 0.946, 1899, { currency: 'EUR' })], 'price-currency-missing', 2],
  ] as const)('with packs %j is %s', (packs, code, count) => {
    const { line, buy, problems } = buying([['sealer', 1.8]], { products: [{ ...sealer, packs }] });
    expect(codes(problems)).toEqual([[code, 'products', 'sealer', 'packs']]);
    expect(line('sealer')?.packs[0]?.count ?? null).toBe(count);
    expect(line('sealer')?.cost.value).toBeNull();
    expect(line('sealer')?.toBuy.value).toBe(1.8);
    expect(buy.unpricedLines.value).toBe(1);
  });

  it('is a pack without a size, which is left out', () => {
    const packs = [aPack('tube', 0, 100), aPack('quart', 0.946, 1899)];
    const { line, problems } = buying([['sealer', 0.9]], { products: [{ ...sealer, packs }] });
    expect(codes(problems)).toEqual([['pack-size-invalid', 'products', 'sealer', 'packs']]);
    expect(line('sealer')?.cost.value).toBe(1899);
  });

  it('is stock on hand that cannot be counted, or of no product, and it is not taken off', () => {
    const { line, problems } = buying([['sealer', 0.9]], {
      products: [sealer],
      onHand: [
        onHand('1', 'sealer', -1),
        onHand('2', 'sealer', 1, 0.5),
        onHand('3', 'nowhere', 1),
        onHand('4', '', 1),
      ],
    });
    expect(codes(problems)).toEqual([
      ['on-hand-invalid', 'onHand', '1', 'amount'],
      ['on-hand-invalid', 'onHand', '2', 'count'],
      ['product-unknown', 'onHand', '3', 'productId'],
      ['product-unknown', 'onHand', '4', 'productId'],
    ]);
    expect(line('sealer')?.onHand.value).toBe(0);
  });

  it('is a tax rate that is none, and then the totals are before tax', () => {
    const { buy, problems } = buying([], { extras: [anExtra('7', {})], settings: { taxPercent: -8 } });
    expect(codes(problems)).toEqual([['setting-invalid', 'settings', null, 'taxPercent']]);
    expect(buy.taxMinor.value).toBeNull();
    expect(buy.totalMinor.value).toBe(1000);
  });

  it('is a need no project can have', () => {
    const rules = [{ id: '1', productId: 'sealer', per: 'project', rate: 1e6 }] as const;
    const extras = [anExtra('2', { productId: 'sealer', quantity: 1e6 })];
    const { line, problems } = buying([], { products: [sealer], rules, extras });
    expect(codes(problems)).toEqual([['quantity-too-large', 'products', 'sealer', null]]);
    expect(line('sealer')?.cost.value).toBeNull();
  });

  it('is an unknown need, whose line is unpriced though packs and prices are there', () => {
    const { line, buy } = buying([['sealer', -1]], { products: [sealer] });
    expect(line('sealer')?.need.value).toBeNull();
    expect(line('sealer')?.cost.value).toBeNull();
    expect(buy.unpricedLines.value).toBe(1);
  });
});

describe('the totals', () => {
  const twoLines = [anExtra('1', { unitPriceMinor: 100 }), anExtra('2', { unitPriceMinor: 250 })];

  it('add up rounded lines: tax is rounded on each', () => {
    // 8.5 % of 1.00 is 8.5, up to 9; of 2.50 is 21.25, down to 21; of the sum it would be 29.75, up to 30 as well
    const { buy } = buying([], { extras: twoLines, settings: { taxPercent: 8.5 } });
    expect([buy.netMinor.value, buy.taxMinor.value, buy.totalMinor.value]).toEqual([350, 30, 380]);
    // 8.5 % of two lines of 1.00: 9 + 9 = 18, not the 17 of the sum
    const ones = [anExtra('1', { unitPriceMinor: 100 }), anExtra('2', { unitPriceMinor: 100 })];
    expect(buying([], { extras: ones, settings: { taxPercent: 8.5 } }).buy.taxMinor.value).toBe(18);
  });

  it('are before tax while no rate is set, and say so', () => {
    const { buy } = buying([], { extras: twoLines });
    expect(buy.taxMinor.value).toBeNull();
    expect(buy.totalMinor.value).toBe(350);
    expect(buy.totalMinor.working.notes).toEqual(['Before tax: no tax rate is set.']);
    expect(buying([], { extras: twoLines, settings: { taxPercent: 0 } }).buy.taxMinor.value).toBe(0);
  });

  it('are at least so much while a line is unpriced', () => {
    const extras = [...twoLines, anExtra('3', { unitPriceMinor: null })];
    const { buy } = buying([], { extras, settings: { taxPercent: 10 } });
    expect([buy.netMinor.value, buy.taxMinor.value, buy.totalMinor.value]).toEqual([350, 35, 385]);
    expect(buy.unpricedLines.value).toBe(1);
    expect(buy.totalMinor.working.notes).toEqual(['At least: 1 of 3 lines have no known cost.']);
  });

  it('of nothing are 0', () => {
    const { buy } = buying([], { settings: { taxPercent: 20 } });
    expect([buy.netMinor.value, buy.taxMinor.value, buy.totalMinor.value]).toEqual([0, 0, 0]);
    expect(buy.categories.map(({ planned: { value } }) => value)).toEqual(COST_CATEGORIES.map(() => 0));
  });

  it('are the sums of rounded lines, category by category, for any project', () => {
    const extra = fc.record({
      quantity: fc.double({ min: 0, max: 500, noNaN: true }),
      unitPriceMinor: fc.option(fc.integer({ min: 0, max: 100_000 })),
      category: fc.constantFrom(...COST_CATEGORIES),
    });
    const tax = fc.double({ min: 0, max: 30, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(extra, { maxLength: 12 }),
        tax,
        fc.double({ min: 0, max: 40, noNaN: true }),
        (rows, rate, need) => {
          const extras = rows.map((row, index) => anExtra(`f${index}`, row));
          const { buy } = buying([['sealer', need]], {
            products: [sealer],
            extras,
            settings: { taxPercent: rate },
          });
          const costs = buy.lines.flatMap(({ cost }) => (cost.value === null ? [] : [cost.value]));
          const net = costs.reduce((sum, cost) => sum + cost, 0);
          for (const cost of costs) expect(Number.isInteger(cost)).toBe(true);
          expect(buy.unpricedLines.value).toBe(buy.lines.length - costs.length);
          if (costs.length > 0 || buy.lines.length === 0) {
            expect(buy.netMinor.value).toBe(net);
            expect(Number.isInteger(buy.taxMinor.value)).toBe(true);
            expect(buy.totalMinor.value).toBe(net + (buy.taxMinor.value ?? Number.NaN));
            // each line is rounded by at most half a minor unit
            const exact = (net * rate) / 100;
            expect(Math.abs((buy.taxMinor.value ?? Number.NaN) - exact)).toBeLessThanOrEqual(
              0.5 * costs.length + 0.01 * costs.length + net * 1e-6,
            );
          } else expect(buy.netMinor.value).toBeNull();
          const byCategory = buy.categories.reduce((sum, { planned: { value } }) => sum + (value ?? 0), 0);
          expect(byCategory).toBe(net);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('the buy list of the bookcase', () => {
  it('comes to 190.95 and 206.23 with tax, by hand', () => {
    const packs: Readonly<Record<string, readonly ReturnType<typeof aPack>[]>> = {
      'disc-120': [aPack('5 discs', 5, 500)],
      pad: [aPack('2 pads', 2, 350)],
      conditioner: [aPack('pint', 0.473, 999), aPack('quart', 0.946, 1499)],
      'brown-stain': [aPack('half pint', 0.237, 599), aPack('quart', 0.946, 1399)],
      'black-stain': [aPack('half pint', 0.237, 599), aPack('quart', 0.946, 1399)],
      sealer: [aPack('quart', 0.946, 1799), aPack('gallon', 3.785, 4599)],
      varnish: [aPack('kit base', 0.8, 4000)],
      hardener: [aPack('kit hardener', 0.2, 1000)],
      spirits: [aPack('litre', 1, 800)],
    };
    const products = BOOKCASE_PRODUCTS.map((product) => ({ ...product, packs: packs[product.id] ?? [] }));
    const input = bookcase({ products, settings: { taxPercent: 8 } });
    const { buy, problems } = planBuying(input, { ...planned(input), banding: [], materials: [] });
    expect(problems).toEqual([]);
    expect(
      buy.lines.map(({ id, packs: bought, cost }) => [
        id,
        bought.map(({ count, label }) => `${count} x ${label}`).join(),
        cost.value,
      ]),
    ).toEqual([
      ['conditioner', '1 x quart', 1499], // 0.537625 L; two pints are 19.98
      ['brown-stain', '1 x quart', 1399], // 0.69563625 L; three half pints (0.711 L) are 17.97
      ['black-stain', '1 x half pint', 599], // 0.23187875 L
      ['sealer', '2 x quart', 3598], // 1.14921875 L; a gallon is 45.99
      ['varnish', '2 x kit base', 8000], // 0.8922 L
      ['hardener', '2 x kit hardener', 2000], // 0.22305 L
      ['spirits', '1 x litre', 800], // 0.114921875 L
      ['disc-120', '1 x 5 discs', 500], // 2.68
      ['pad', '2 x 2 pads', 700], // 2.01: a hundredth of a pad over two is a third pad, and so a second pack
    ]);
    // net 14.99 + 13.99 + 5.99 + 35.98 + 80.00 + 20.00 + 8.00 + 5.00 + 7.00 = 190.95
    expect(buy.netMinor.value).toBe(19_095);
    // 8 % line by line: 1.20 (119.92) + 1.12 (111.92) + 0.48 (47.92) + 2.88 (287.84) + 6.40 + 1.60 + 0.64 + 0.40 + 0.56
    expect(buy.taxMinor.value).toBe(1528);
    expect(buy.totalMinor.value).toBe(20_623);
  });
});
