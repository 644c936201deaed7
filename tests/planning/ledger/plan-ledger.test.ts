import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../server/planning/figure.ts';
import { anExtra, anOrder, anOrderLine, aPayment, aReceipt, headingOf, ledgerOf } from './ledger-project.ts';

const orderOf = (ledger: ReturnType<typeof ledgerOf>, id: string) => {
  const order = ledger.orders.find((one) => one.id === id);
  if (order === undefined) throw new Error(`no order ${id}`);
  return order;
};

describe('the ledger', () => {
  it('of a project without orders plans, has paid nothing and forecasts the plan', () => {
    // 4 x 12.50 = 50.00, tax 8 % = 4.00. Budget 60.00.
    const ledger = ledgerOf({
      settings: { taxPercent: 8 },
      extras: [anExtra('1', 'hardware', 4, 1250)],
      budgets: [{ id: '1', category: 'hardware', amountMinor: 6000 }],
    });
    expect(headingOf(ledger, 'hardware')).toEqual({
      budget: 6000,
      planned: 5400,
      ordered: 0,
      paid: 0,
      open: 0,
      toOrder: 5400,
      forecast: 5400,
      left: 600,
    });
    expect(headingOf(ledger, 'sheets')).toMatchObject({ budget: null, planned: 0, forecast: 0, left: null });
    expect(ledger.totals.forecast.value).toBe(5400);
    expect(ledger.totals.left.value).toBe(600);
    expect(ledger.series).toEqual([]);
    expect(ledger.problems).toEqual([]);
  });

  it('rounds tax half up on each line, and adds rounded lines', () => {
    // 8.5 % of 1.00 is 8.5, rounded 9; of 2.50 is 21.25, rounded 21; of both together it would be 29.75, rounded 30 too;
    // three lines of 1.00 are 3 x 9 = 27 and not 25.5.
    const ledger = ledgerOf({
      settings: { taxPercent: 8.5 },
      orders: [anOrder('1', { deliveryMinor: 100, surchargeMinor: 100 })],
      orderLines: [anOrderLine('1', '1', 'hardware', 1, 100), anOrderLine('2', '1', 'glue', 1, 250)],
    });
    const order = orderOf(ledger, '1');
    // Goods 350, charges 200, tax 9 + 21 + 9 + 9 = 48: 598.
    expect([order.goods.value, order.charges.value, order.tax.value, order.total.value]).toEqual([
      350, 200, 48, 598,
    ]);
    expect(headingOf(ledger, 'hardware').ordered).toBe(109);
    expect(headingOf(ledger, 'glue').ordered).toBe(271);
    expect(headingOf(ledger, 'other').ordered).toBe(218);
    expect(ledger.totals.ordered.value).toBe(598);
  });

  it('takes each line its own rate, and the order its own for charges', () => {
    // 10.00 at 0 %, 10.00 at the project's 20 % = 2.00, delivery 5.00 at 10 % = 0.50.
    const ledger = ledgerOf({
      settings: { taxPercent: 20 },
      orders: [anOrder('1', { deliveryMinor: 500, taxPercent: 10 })],
      orderLines: [
        anOrderLine('1', '1', 'glue', 1, 1000, { taxPercent: 0 }),
        anOrderLine('2', '1', 'glue', 1, 1000),
      ],
    });
    expect(orderOf(ledger, '1').tax.value).toBe(250);
    expect(orderOf(ledger, '1').total.value).toBe(2750);
  });

  it('shares a part payment over the headings by largest remainder', () => {
    // Headings of 1.00, 1.00 and 1.00; 1.00 paid: 33.33 each, the one unit left over goes to the first.
    const ledger = ledgerOf({
      orders: [anOrder('1')],
      orderLines: (['sheets', 'glue', 'hardware'] as const).map((category, index) =>
        anOrderLine(String(index), '1', category, 1, 100),
      ),
      payments: [aPayment('1', 100, { orderId: '1' })],
    });
    expect(headingOf(ledger, 'sheets')).toMatchObject({ paid: 34, open: 66 });
    expect(headingOf(ledger, 'glue')).toMatchObject({ paid: 33, open: 67 });
    expect(headingOf(ledger, 'hardware')).toMatchObject({ paid: 33, open: 67 });
    expect(ledger.totals.paid.value).toBe(100);
    expect(orderOf(ledger, '1').open.value).toBe(200);
  });

  it('leaves nothing open under any heading when several payments add up to the order', () => {
    // Two headings of 1 minor unit; paid in two payments of 1 each. Each payment shared by itself would give 2 and 0.
    const ledger = ledgerOf({
      orders: [anOrder('1')],
      orderLines: [anOrderLine('1', '1', 'sheets', 1, 1), anOrderLine('2', '1', 'glue', 1, 1)],
      payments: [aPayment('1', 1, { orderId: '1' }), aPayment('2', 1, { orderId: '1' })],
    });
    expect(headingOf(ledger, 'sheets')).toMatchObject({ paid: 1, open: 0 });
    expect(headingOf(ledger, 'glue')).toMatchObject({ paid: 1, open: 0 });
  });

  it('takes what is sent back off what is ordered, expects its money back, and takes the refund off what is paid', () => {
    // 3 x 40.00 of sheets, 20.00 of glue, all paid: 140.00. One sheet goes back.
    const given = {
      orders: [anOrder('1')],
      orderLines: [anOrderLine('1', '1', 'sheets', 3, 4000), anOrderLine('2', '1', 'glue', 1, 2000)],
      receipts: [aReceipt('1', '1', 'received', 3), aReceipt('2', '1', 'returned', 1)],
      payments: [aPayment('1', 14000, { orderId: '1' })],
    } as const;
    const before = ledgerOf(given);
    expect(headingOf(before, 'sheets')).toMatchObject({ ordered: 8000, paid: 12000, open: -4000 });
    expect(headingOf(before, 'glue')).toMatchObject({ ordered: 2000, paid: 2000, open: 0 });
    expect(before.problems.map(({ code, message }) => [code, message])).toEqual([
      ['order-overpaid', 'The order 2027-03-01 comes to $100.00, but $140.00 is paid.'],
    ]);
    const after = ledgerOf({
      ...given,
      payments: [...given.payments, aPayment('2', 4000, { kind: 'refund', orderId: '1' })],
    });
    expect(headingOf(after, 'sheets')).toMatchObject({ ordered: 8000, paid: 8000, open: 0 });
    expect(headingOf(after, 'glue')).toMatchObject({ paid: 2000, open: 0 });
    expect(after.totals.paid.value).toBe(10000);
    expect(after.problems).toEqual([]);
  });

  it('reckons with the price charged, and says what the change costs with tax', () => {
    // Agreed 3 x 19.99 = 59.97, tax 8 % 4.7976 rounded 4.80: 64.77. Charged 3 x 20.49 = 61.47, tax 4.9176 rounded 4.92: 66.39.
    const ledger = ledgerOf({
      settings: { taxPercent: 8 },
      orders: [anOrder('1')],
      orderLines: [anOrderLine('1', '1', 'finish', 3, 1999, { invoicedPriceMinor: 2049 })],
    });
    const order = orderOf(ledger, '1');
    expect([order.total.value, order.priceChange.value]).toEqual([6639, 162]);
    expect(headingOf(ledger, 'finish').ordered).toBe(6639);
  });

  it('counts what was bought without an order as ordered and paid under its own heading', () => {
    const ledger = ledgerOf({
      payments: [
        aPayment('1', 1500, { category: 'consumables' }),
        aPayment('2', 500, { category: 'consumables', kind: 'refund', date: '2027-03-09' }),
      ],
    });
    expect(headingOf(ledger, 'consumables')).toMatchObject({
      ordered: 1000,
      paid: 1000,
      open: 0,
      forecast: 1000,
    });
    expect(ledger.payments.map(({ own }) => own.value)).toEqual([1500, -500]);
    expect(ledger.series).toEqual([
      { date: '2027-03-07', orderedMinor: 1500, paidMinor: 1500 },
      { date: '2027-03-09', orderedMinor: 1000, paidMinor: 1000 },
    ]);
  });

  it('bears only the share of a payment that is this project’s', () => {
    // A third of 100.00 entered as 0.3333: 33.33. Half of 1.01: 50.5 rounded 51.
    const ledger = ledgerOf({
      payments: [aPayment('1', 10000, { share: 0.3333 }), aPayment('2', 101, { share: 0.5 })],
    });
    expect(ledger.payments.map(({ own }) => own.value)).toEqual([3333, 51]);
    expect(ledger.totals.paid.value).toBe(3384);
  });

  it('does not order again what is ordered, and forecasts at the price ordered', () => {
    // 4 hinges planned at 2.00; ordered 4 at 1.80: to order nothing, forecast 7.20.
    const ledger = ledgerOf({
      extras: [anExtra('1', 'hardware', 4, 200)],
      orders: [anOrder('1')],
      orderLines: [anOrderLine('1', '1', 'hardware', 4, 180, { name: 'extra 1' })],
    });
    expect(headingOf(ledger, 'hardware')).toMatchObject({
      planned: 800,
      ordered: 720,
      toOrder: 0,
      forecast: 720,
    });
  });

  it('puts the contingency on what is still to be ordered only', () => {
    // To order 99.99, ordered 500.00, 5 %: 4.9995 rounded 5.00. Forecast 604.99.
    const ledger = ledgerOf({
      settings: { contingencyPercent: 5 },
      extras: [anExtra('1', 'hardware', 1, 9999)],
      orders: [anOrder('1')],
      orderLines: [anOrderLine('1', '1', 'sheets', 1, 50000)],
    });
    expect(ledger.contingency.value).toBe(500);
    expect(ledger.forecast.value).toBe(60499);
    expect(ledger.totals.forecast.value).toBe(59999);
  });

  it('compares with a ready-made price, and with one’s own hours', () => {
    // Forecast 200.00; 6 h at work and 90 min of coats to come at 20.00/h: 150.00. Ready made 300.00.
    const ledger = ledgerOf(
      {
        settings: { readyMadeMinor: 30000, rateMinorPerHour: 2000 },
        extras: [anExtra('1', 'sheets', 1, 20000)],
        workHours: [
          { id: '1', date: '2027-03-02', hours: 4.5, note: '' },
          { id: '2', date: '2027-03-03', hours: 1.5, note: '' },
        ],
      },
      90,
    );
    expect(ledger.labour.value).toBe(15000);
    expect(ledger.forecastWithLabour.value).toBe(35000);
    expect(ledger.saved.value).toBe(10000);
    expect(ledger.savedWithLabour.value).toBe(-5000);
  });

  it('knows nothing of labour without a rate, and of savings without a ready-made price', () => {
    const ledger = ledgerOf({ workHours: [{ id: '1', date: '2027-03-02', hours: 4, note: '' }] });
    expect([ledger.labour.value, ledger.forecastWithLabour.value, ledger.saved.value]).toEqual([
      null,
      null,
      null,
    ]);
  });

  it('says what cannot be right, and reckons with the rest', () => {
    const ledger = ledgerOf({
      orders: [anOrder('1', { date: '' }), anOrder('2', { date: '2027-02-30' })],
      orderLines: [
        anOrderLine('1', '1', 'sheets', 1, null),
        anOrderLine('2', '1', 'glue', 1_000_000, 1_000_000_000_000),
        anOrderLine('3', '1', 'glue', 1, 700),
        anOrderLine('4', '2', 'glue', 1, 100),
      ],
      receipts: [aReceipt('1', '4', 'returned', 2)],
      payments: [aPayment('1', 100, { orderId: 'gone', taxMinor: 101 })],
      budgets: [
        { id: '1', category: 'glue', amountMinor: 100 },
        { id: '2', category: 'glue', amountMinor: 200 },
      ],
    });
    expect(ledger.problems.map(({ code, at }) => `${code} ${at.table}/${at.id}/${at.field}`)).toEqual([
      'ledger-date-missing orders/1/date',
      'ledger-date-unreadable orders/2/date',
      'budget-twice budgets/2/category',
      'price-missing orderLines/1/unitPriceMinor',
      'amount-too-large orderLines/2/unitPriceMinor',
      'returned-too-many orderLines/4/count',
      'payment-order-unknown payments/1/orderId',
      'payment-tax-too-large payments/1/taxMinor',
    ]);
    expect(headingOf(ledger, 'glue')).toMatchObject({ budget: 300, ordered: 700, left: -400 });
    expect(headingOf(ledger, 'sheets')).toMatchObject({ ordered: null, open: null, forecast: 0 });
  });
});

describe('the workings of a ledger', () => {
  it('lead on to figures that are there, with the value named', () => {
    const ledger = ledgerOf({
      settings: { taxPercent: 20, contingencyPercent: 5, readyMadeMinor: 90000, rateMinorPerHour: 100 },
      extras: [anExtra('1', 'glue', 3, 250)],
      budgets: [{ id: '1', category: 'glue', amountMinor: 100 }],
      orders: [anOrder('7', { deliveryMinor: 100 })],
      orderLines: [anOrderLine('1', '7', 'sheets', 2, 500)],
      payments: [aPayment('3', 400, { orderId: '7' }), aPayment('4', 70)],
    });
    const figures: [string, Figure][] = [];
    const collect = (value: unknown, path: string): void => {
      if (typeof value !== 'object' || value === null) return;
      if ('working' in value) figures.push([path, value as Figure]);
      else if (Array.isArray(value)) for (const row of value) collect(row, `${path}/${row.id}`);
      else for (const [name, inner] of Object.entries(value)) collect(inner, `${path}/${name}`);
    };
    collect(ledger, 'ledger');
    const known = new Map(figures);
    const links = figures.flatMap(([path, { working }]) =>
      working.inputs.flatMap(({ from, value }) =>
        from?.startsWith('ledger/') ? [[path, from, value] as const] : [],
      ),
    );
    expect(links.length).toBeGreaterThan(60);
    for (const [path, from, value] of links) {
      expect([path, from, known.has(from)]).toEqual([path, from, true]);
      // What was paid for an order stands in full in the order, and by its share under each heading.
      if (!(path.includes('/headings/') && from.startsWith('ledger/orders/')))
        expect([path, from, value]).toEqual([path, from, known.get(from)?.value]);
    }
  });
});
