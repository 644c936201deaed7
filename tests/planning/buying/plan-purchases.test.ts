import { describe, expect, it } from 'vitest';
import type { BuyingLine } from '../../../server/planning/buying/buying-plan.ts';
import { aPack, aProduct } from '../finish/sample-project.ts';
import {
  AN_ORDER,
  aLeftover,
  aNeed,
  anOrderLine,
  aReceipt,
  aSupplier,
  COAT_1,
  COAT_2,
  doneCoat,
  MONDAY,
  purchases,
  TABLE,
  tableCalendar,
} from './purchase-project.ts';

/** Quarts of 1 L at 10.00 from the counter; coverage 10 m2/L. */
const QUART = aPack('quart', 1, 1000, { supplierId: 'counter' });
const varnish = aProduct('varnish', 'finish', { coverage: 10, shelfLifeOpened: 6 }, { packs: [QUART] });
const counter = aSupplier('counter', { name: 'Finish counter' });

const amounts = ({ need, onHand, ordered, received, toOrder, state }: BuyingLine): unknown[] => [
  ...[need, onHand, ordered, received, toOrder].map(({ value }) => value && Number(value.toFixed(9))),
  state,
];

describe('an order that comes in parts', () => {
  const shop = { products: [varnish], suppliers: [counter], extras: [aNeed('1', 'varnish', 4.5)] };

  it('goes from to order over ordered and part received to received', () => {
    // 4.5 L are 5 quarts.
    const first = purchases(shop).line('varnish');
    expect(amounts(first)).toEqual([4.5, 0, 0, 0, 4.5, 'to-order']);
    expect(first.packs).toEqual([
      {
        packId: 'quart',
        productId: 'varnish',
        label: 'quart',
        amount: 1,
        count: 5,
        priceMinor: 1000,
        lineMinor: 5000,
      },
    ]);
    const some = { ...shop, orders: [AN_ORDER], orderLines: [anOrderLine('7', 'varnish', 3)] };
    // 3 ordered, so 1.5 L are still to order: 2 quarts
    expect(amounts(purchases(some).line('varnish'))).toEqual([4.5, 0, 3, 0, 1.5, 'part-ordered']);
    expect(purchases(some).line('varnish').cost.value).toBe(2000);
    const all = { ...some, orderLines: [anOrderLine('7', 'varnish', 5)] };
    expect(amounts(purchases(all).line('varnish'))).toEqual([4.5, 0, 5, 0, 0, 'ordered']);
    const part = { ...all, receipts: [aReceipt('1', '7', 2), aReceipt('2', '7', 1)] };
    expect(amounts(purchases(part).line('varnish'))).toEqual([4.5, 0, 5, 3, 0, 'part-received']);
    expect(purchases(part).orders[0]).toMatchObject({
      state: 'part-received',
      lines: [{ id: '7', ordered: 5, received: 3, returned: 0, open: 2 }],
    });
    const rest = { ...all, receipts: [...part.receipts, aReceipt('3', '7', 2)] };
    expect(amounts(purchases(rest).line('varnish'))).toEqual([4.5, 0, 5, 5, 0, 'received']);
    expect(purchases(rest).orders[0]?.state).toBe('received');
    // 5 L are in the shop, none is used.
    expect(purchases(rest).stock[0]?.now.value).toBe(5);
  });

  it('is ordered again where something went back, and not where it was replaced', () => {
    const came = {
      ...shop,
      orders: [AN_ORDER],
      orderLines: [anOrderLine('7', 'varnish', 5)],
      receipts: [aReceipt('1', '7', 5), aReceipt('2', '7', 1, { kind: 'returned' })],
    };
    // 4 are kept: 0.5 L short, one quart more
    expect(amounts(purchases(came).line('varnish'))).toEqual([4.5, 0, 4, 4, 0.5, 'part-ordered']);
    expect(purchases(came).stock[0]?.now.value).toBe(4);
    const replaced = { ...came, receipts: [...came.receipts, aReceipt('3', '7', 1)] };
    expect(amounts(purchases(replaced).line('varnish'))).toEqual([4.5, 0, 5, 5, 0, 'received']);
  });

  it('does not count more sent back than ever came, and says so', () => {
    const { line, problems } = purchases({
      ...shop,
      orders: [AN_ORDER],
      orderLines: [anOrderLine('7', 'varnish', 5)],
      receipts: [aReceipt('1', '7', 2), aReceipt('2', '7', 3, { kind: 'returned' })],
    });
    // 2 came and went: 3 are still to come, 1.5 L short
    expect(amounts(line('varnish'))).toEqual([4.5, 0, 3, 0, 1.5, 'part-ordered']);
    expect(problems).toMatchObject([
      {
        code: 'receipt-returned-too-many',
        severity: 'error',
        at: { table: 'receipts', id: '2', field: 'count' },
      },
    ]);
  });

  it('stays what was agreed when the catalogue price changes after it', () => {
    const dearer = { ...varnish, packs: [{ ...QUART, priceMinor: 1300 }] };
    const { line } = purchases({
      ...shop,
      products: [dearer],
      orders: [AN_ORDER],
      orderLines: [anOrderLine('7', 'varnish', 3, { unitPriceMinor: 1000 })],
    });
    // What is still to order costs the new price, 2 x 13.00; the ordered 3 L are not asked about again.
    expect(line('varnish').cost.value).toBe(2600);
    expect(amounts(line('varnish'))).toEqual([4.5, 0, 3, 0, 1.5, 'part-ordered']);
  });

  it('is shown though nothing needs it any more', () => {
    const { line } = purchases({
      ...shop,
      extras: [],
      orders: [AN_ORDER],
      orderLines: [anOrderLine('7', 'varnish', 2)],
    });
    expect(amounts(line('varnish'))).toEqual([0, 0, 2, 0, 0, 'ordered']);
    expect(line('varnish').notes[0]).toContain('nothing in the project needs it');
  });

  it('is overdue when it should have been here', () => {
    // Monday 1 March and 2 working days: Wednesday 3 March
    const ordered = { ...shop, orders: [AN_ORDER], orderLines: [anOrderLine('7', 'varnish', 5)] };
    expect(purchases(ordered, { today: '2027-03-03' }).orders[0]).toMatchObject({
      expectedOn: '2027-03-03',
      overdue: false,
    });
    const late = purchases(ordered, { today: '2027-03-04' });
    expect(late.orders[0]?.overdue).toBe(true);
    expect(late.problems.map(({ code }) => code)).toEqual(['order-overdue']);
  });
});

describe('a coat that is done', () => {
  // 6 m2 at 10 m2/L: 0.6 L a coat, 1.2 L in all: 2 quarts
  const shop = { ...TABLE, products: [varnish], suppliers: [counter] };

  it('takes what was measured, or what was reckoned, from stock', () => {
    const came = {
      ...shop,
      orders: [AN_ORDER],
      orderLines: [anOrderLine('7', 'varnish', 2)],
      receipts: [aReceipt('1', '7', 2)],
    };
    expect(amounts(purchases(came).line('varnish'))).toEqual([1.2, 0, 2, 2, 0, 'received']);
    const reckoned = purchases(
      { ...came, doneTasks: [doneCoat(COAT_1, '2027-03-02', null)] },
      { calendar: tableCalendar([COAT_1]) },
    );
    expect(reckoned.stock[0]?.now.value).toBeCloseTo(1.4, 9);
    expect(reckoned.line('varnish').need.value).toBeCloseTo(1.2, 9);
    const measured = purchases(
      { ...came, doneTasks: [doneCoat(COAT_1, '2027-03-02', 0.75)] },
      { calendar: tableCalendar([COAT_1]) },
    );
    // 0.75 in place of 0.6: the whole project needs 1.35 L, and 1.25 L are left for the 0.6 L to come.
    expect(measured.stock[0]?.used.value).toBe(0.75);
    expect(measured.stock[0]?.now.value).toBe(1.25);
    expect(amounts(measured.line('varnish'))).toEqual([1.35, 0, 2, 2, 0, 'received']);
  });

  it('makes more to order when it took so much that the rest will not do', () => {
    const { line } = purchases(
      {
        ...shop,
        orders: [AN_ORDER],
        orderLines: [anOrderLine('7', 'varnish', 2)],
        receipts: [aReceipt('1', '7', 2)],
        doneTasks: [doneCoat(COAT_1, '2027-03-02', 1.5)],
      },
      { calendar: tableCalendar([COAT_1]) },
    );
    // 0.5 L are left for 0.6 L: 0.1 L short, one quart
    expect(amounts(line('varnish'))).toEqual([2.1, 0, 2, 2, 0.1, 'part-ordered']);
    expect(line('varnish').packs.map(({ count }) => count)).toEqual([1]);
  });

  it('uses the leftover first; once that is past its date the rest of it no longer counts', () => {
    const leftover = {
      ...shop,
      onHand: [aLeftover('5', 'varnish', 0.9, { bestBefore: '2027-03-04', place: 'shelf 2' })],
    };
    // Before: 0.9 L of 1.2 L are there, 0.3 L are short.
    expect(amounts(purchases(leftover).line('varnish'))).toEqual([1.2, 0.9, 0, 0, 0.3, 'to-order']);
    const used = { ...leftover, doneTasks: [doneCoat(COAT_1, '2027-03-02', 0.5)] };
    const options = { calendar: tableCalendar([COAT_1]) };
    // After coat 1 with 0.5 L: 0.4 L are left for 0.6 L, 0.2 L short.
    const before = purchases(used, { ...options, today: '2027-03-04' });
    expect(amounts(before.line('varnish'))).toEqual([1.1, 0.9, 0, 0, 0.2, 'to-order']);
    // On the 5th the 0.4 L are past their date: all 0.6 L of coat 2 are to order, but not the 0.5 L that went on.
    const after = purchases(used, { ...options, today: '2027-03-05' });
    expect(amounts(after.line('varnish'))).toEqual([1.1, 0.5, 0, 0, 0.6, 'to-order']);
    expect(after.stock[0]).toMatchObject({
      now: { value: 0 },
      pieces: [{ from: 'onHand', id: '5', place: 'shelf 2', goodUntil: '2027-03-04', expired: true }],
    });
    expect(after.stock[0]?.expired.value).toBeCloseTo(0.4, 9);
    expect(after.problems).toMatchObject([
      { code: 'on-hand-expired', at: { table: 'onHand', id: '5', field: 'bestBefore' } },
    ]);
    expect(after.problems[0]?.message).toMatch(/^400 mL of "Varnish"/i);
  });

  it('that used what was never entered as stock makes nothing more to order, and says so', () => {
    const { line, problems } = purchases(
      { ...shop, doneTasks: [doneCoat(COAT_1, '2027-03-02', 0.6)] },
      { calendar: tableCalendar([COAT_1]) },
    );
    expect(amounts(line('varnish'))).toEqual([1.2, 0.6, 0, 0, 0.6, 'to-order']);
    expect(problems.map(({ code }) => code)).toEqual(['stock-missing']);
  });

  it('is added to by what is taken by hand', () => {
    const { line, stock } = purchases({
      ...shop,
      onHand: [aLeftover('5', 'varnish', 2)],
      stockUses: [{ id: '1', productId: 'varnish', date: MONDAY, amount: 0.3, note: 'spilled' }],
    });
    expect(amounts(line('varnish'))).toEqual([1.5, 2, 0, 0, 0, 'covered']);
    expect(stock[0]?.now.value).toBeCloseTo(1.7, 9);
  });

  it('tells the coverage that was got, allowing for what stays in the brush', () => {
    const recipes = [
      {
        ...TABLE.recipes[0],
        steps: TABLE.recipes[0]?.steps.map((step) => ({ ...step, sessionLossL: 0.1 })) ?? [],
      },
    ] as typeof TABLE.recipes;
    const { coverages } = purchases(
      {
        ...shop,
        recipes,
        doneTasks: [doneCoat(COAT_1, '2027-03-02', 0.6), doneCoat(COAT_2, '2027-03-03', 0.58)],
      },
      { calendar: tableCalendar([COAT_1, COAT_2]) },
    );
    // Reckoned 0.6 + 0.1 L a coat at 10 m2/L. Measured 0.6 and 0.58 less 0.1 each: 12 m2 with 0.98 L, 12.2449 m2/L.
    expect(coverages).toMatchObject([{ id: 'varnish', coats: 2, areaM2: 12, catalogueTypical: 10 }]);
    expect(coverages[0]?.got.value).toBeCloseTo(12 / 0.98, 9);
    expect(coverages[0]?.litres).toBeCloseTo(1.18, 9);
  });
});

describe('the day of need', () => {
  const shop = {
    ...TABLE,
    products: [
      varnish,
      aProduct('screw', 'hardware', {}, { packs: [aPack('box', 100, 500, { supplierId: 'counter' })] }),
    ],
    suppliers: [counter],
    extras: [aNeed('2', 'screw', 50)],
  };
  it('comes from the calendar: the first task that uses it, or assembly', () => {
    const { line } = purchases(shop, { calendar: tableCalendar() });
    // coat 1 on Tuesday 2 March, 2 working days before: Monday, Friday 26 February
    expect(line('varnish')).toMatchObject({ neededBy: '2027-03-02', orderBy: '2027-02-26', urgency: 'late' });
    expect(line('varnish').notes).toContain('Ordered today it should be here on Wednesday 2027-03-03.');
    // ready to assemble on Friday 5 March: Wednesday 3 March
    expect(line('screw')).toMatchObject({ neededBy: '2027-03-05', orderBy: '2027-03-03', urgency: 'soon' });
  });

  it('moves on to the next coat when the first is done', () => {
    const { line } = purchases(
      { ...shop, doneTasks: [doneCoat(COAT_1, '2027-03-02', 0.6)] },
      { calendar: tableCalendar([COAT_1]), today: MONDAY },
    );
    expect(line('varnish')).toMatchObject({
      neededBy: '2027-03-03',
      orderBy: '2027-03-01',
      urgency: 'today',
    });
  });

  it('is not known without a calendar, and that is said', () => {
    const { line } = purchases(shop);
    expect(line('varnish')).toMatchObject({ neededBy: null, orderBy: null, urgency: 'none' });
    expect(line('varnish').orderByWorking[0]).toContain('not worked out yet');
  });
});

describe('the supplier of a line', () => {
  it('flips to the dearer one below the minimum order, and the basket says how little is missing', () => {
    const can = (supplierId: string, price: number) => aPack(`can-${supplierId}`, 1, price, { supplierId });
    const shop = {
      products: [aProduct('sealer', 'finish', {}, { packs: [can('A', 1800), can('B', 1950)] })],
      extras: [aNeed('1', 'sealer', 1)],
    };
    const free = [aSupplier('A'), aSupplier('B')];
    expect(purchases({ ...shop, suppliers: free }).line('sealer')).toMatchObject({
      supplierId: 'A',
      state: 'to-order',
    });
    // Below 25.00 A adds 5.00: 23.00 against 19.50.
    const strict = [aSupplier('A', { minimumOrderMinor: 2500, surchargeMinor: 500 }), aSupplier('B')];
    const { line, choice, baskets } = purchases({ ...shop, suppliers: strict });
    expect(line('sealer').supplierId).toBe('B');
    expect(line('sealer').notes).toEqual([
      'By itself it costs $1.50 less at the A; ordered here, delivery and surcharges come to less in all.',
    ]);
    expect([choice.total.value, choice.bound.value, choice.lineByLine.value, choice.proven]).toEqual([
      1950,
      1950,
      2300,
      true,
    ]);
    expect(baskets).toMatchObject([{ id: 'B', goods: { value: 1950 }, surcharge: { value: 0 }, notes: [] }]);
    // Where A is the only one, its surcharge is paid.
    const only = purchases({
      ...shop,
      products: [aProduct('sealer', 'finish', {}, { packs: [can('A', 1800)] })],
      suppliers: strict,
      settings: { taxPercent: 20 },
    });
    // 18.00 + 3.60 tax, surcharge 5.00 + 1.00: 27.60
    expect(only.baskets[0]).toMatchObject({
      goods: { value: 1800 },
      delivery: { value: 0 },
      surcharge: { value: 500 },
      tax: { value: 460 },
      total: { value: 2760 },
      notes: ['Goods for $7.00 more would reach the minimum order, which saves $5.00.'],
    });
  });

  it('is never a retired one, and no price in another currency is compared', () => {
    const shop = {
      products: [
        aProduct(
          'sealer',
          'finish',
          {},
          {
            packs: [
              aPack('a', 1, 500, { supplierId: 'A' }),
              aPack('b', 1, 900, { supplierId: 'B' }),
              aPack('c', 1, 1, { supplierId: 'C', currency: 'EUR' }),
            ],
          },
        ),
      ],
      extras: [aNeed('1', 'sealer', 1)],
    };
    const suppliers = [aSupplier('A', { retired: true }), aSupplier('B'), aSupplier('C')];
    expect(purchases({ ...shop, suppliers }).line('sealer')).toMatchObject({
      supplierId: 'B',
      cost: { value: 900 },
    });
    const alone = {
      ...shop,
      products: [{ ...shop.products[0], packs: [aPack('a', 1, 500, { supplierId: 'A' })] }],
    };
    const { line, problems } = purchases({ ...alone, suppliers } as never);
    expect(line('sealer')).toMatchObject({ supplierId: null, packs: [], cost: { value: null } });
    expect(problems).toMatchObject([{ code: 'supplier-retired', at: { table: 'products', id: 'sealer' } }]);
  });

  it('may sell an allowed substitute that comes cheaper; without leave it does not', () => {
    const shop = {
      products: [
        aProduct('sealer', 'finish', {}, { packs: [aPack('a', 1, 2000, { supplierId: 'A' })] }),
        aProduct('other', 'finish', {}, { packs: [aPack('b', 1, 1500, { supplierId: 'B' })] }),
      ],
      suppliers: [aSupplier('A'), aSupplier('B')],
      extras: [aNeed('1', 'sealer', 1.5)],
    };
    expect(purchases(shop).line('sealer')).toMatchObject({ substituteId: null, cost: { value: 4000 } });
    const allowed = { ...shop, substitutes: [{ id: '1', productId: 'sealer', substituteId: 'other' }] };
    const { line } = purchases(allowed);
    expect(line('sealer')).toMatchObject({ substituteId: 'other', supplierId: 'B', cost: { value: 3000 } });
    expect(line('sealer').packs[0]).toMatchObject({ productId: 'other', packId: 'b', count: 2 });
    // Ordered and here, it covers the line: 2 L of 1.5 L, and nothing is asked for again.
    const ordered = purchases({
      ...allowed,
      orders: [AN_ORDER],
      orderLines: [anOrderLine('7', 'other', 2, { packId: 'b' })],
      receipts: [aReceipt('1', '7', 2)],
    });
    expect(ordered.line('sealer')).toMatchObject({ toOrder: { value: 0 }, state: 'received' });
    expect(ordered.lines).toHaveLength(1);
    // On its way it counts too.
    const coming = purchases({
      ...allowed,
      orders: [AN_ORDER],
      orderLines: [anOrderLine('7', 'other', 1, { packId: 'b' })],
    });
    expect(amounts(coming.line('sealer'))).toEqual([1.5, 0, 1, 0, 0.5, 'part-ordered']);
  });

  it('is asked only for what a leftover of an allowed substitute does not cover', () => {
    const stain = aProduct('stain', 'finish', {}, { packs: [QUART] });
    const shop = {
      ...TABLE,
      products: [varnish, stain],
      suppliers: [counter],
      onHand: [aLeftover('5', 'stain', 1)],
      substitutes: [{ id: '1', productId: 'varnish', substituteId: 'stain' }],
    };
    // 1.2 L needed, 1 L of the other on hand
    expect(amounts(purchases(shop).line('varnish'))).toEqual([1.2, 1, 0, 0, 0.2, 'to-order']);
    // Coat 1 took 0.7 L, from the other: 0.3 L of it are left for 0.6 L.
    const { line, stock, problems } = purchases(
      { ...shop, doneTasks: [doneCoat(COAT_1, '2027-03-02', 0.7)] },
      { calendar: tableCalendar([COAT_1]) },
    );
    expect(amounts(line('varnish'))).toEqual([1.3, 1, 0, 0, 0.3, 'to-order']);
    expect(stock.find(({ id }) => id === 'stain')?.now.value).toBeCloseTo(0.3, 9);
    expect(problems).toEqual([]);
  });
});

describe('sheets and lines added by hand', () => {
  it('are ordered as whole packs of the cutting plan, less those ordered already', () => {
    const ply = aProduct(
      'ply',
      'sheet',
      { thicknessNominal: 18 },
      {
        packs: [
          { ...aPack('full', 1, 5000, { supplierId: 'A' }), lengthMm: 2000, widthMm: 1000 },
          { ...aPack('full-b', 1, 5500, { supplierId: 'B' }), lengthMm: 2000, widthMm: 1000 },
          { ...aPack('half', 1, 4900, { supplierId: 'A' }), lengthMm: 1000, widthMm: 1000 },
        ],
      },
    );
    // 4 pieces of 1900 x 900: a sheet each
    const parts = [
      { ...TABLE.parts[0], materialId: 'ply', showRecipeId: '', quantity: '4', length: '1900', width: '900' },
    ];
    const shop = {
      parts,
      products: [ply],
      suppliers: [aSupplier('A', { deliveryMinor: 4000 }), aSupplier('B')],
    } as never;
    const first = purchases(shop);
    // 4 x 50.00 + 40.00 at A, 4 x 55.00 at B
    expect(first.line('ply')).toMatchObject({
      supplierId: 'B',
      cost: { value: 22_000 },
      toOrder: { value: 4 },
    });
    const ordered = (more: object) =>
      purchases({
        ...(shop as object),
        orders: [AN_ORDER],
        orderLines: [anOrderLine('7', 'ply', 3, { packId: 'full', ...more })],
      } as never).line('ply');
    expect(ordered({})).toMatchObject({
      toOrder: { value: 1 },
      state: 'part-ordered',
      cost: { value: 5500 },
    });
    expect(ordered({ packId: 'full-b' })).toMatchObject({ toOrder: { value: 1 } });
    // Half sheets do not stand for whole ones.
    expect(ordered({ packId: 'half' })).toMatchObject({ toOrder: { value: 4 }, state: 'part-ordered' });
    expect(ordered({ count: 4 })).toMatchObject({
      toOrder: { value: 0 },
      state: 'ordered',
      cost: { value: 0 },
    });
  });

  it('are told by their id or their name where they are not in the catalogue', () => {
    const shop = {
      suppliers: [counter],
      extras: [aNeed('9', '', 20, { name: 'Sash lock', unitPriceMinor: 450, supplierId: 'counter' })],
    };
    expect(purchases(shop).line('extra-9')).toMatchObject({ cost: { value: 9000 }, supplierId: 'counter' });
    for (const more of [{ packId: 'extra-9' }, { packId: '', name: 'sash lock ' }]) {
      const { line } = purchases({
        ...shop,
        orders: [AN_ORDER],
        orderLines: [anOrderLine('7', '', 12, more)],
        receipts: [aReceipt('1', '7', 12)],
      });
      // 8 more at 4.50: 36.00
      expect(amounts(line('extra-9'))).toEqual([20, 0, 12, 12, 8, 'part-ordered']);
      expect(line('extra-9').cost.value).toBe(3600);
    }
  });
});
