import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planQuote } from '../../../server/planning/ledger/plan-quote.ts';
import { plan } from '../../../server/planning/plan.ts';
import type { Quote } from '../../../server/planning/project-input.ts';
import { aPart, aProject } from '../finish/sample-project.ts';
import { anExtra, TODAY } from './ledger-project.ts';

function aQuote(more: Partial<Quote> = {}): Quote {
  return {
    id: '1',
    title: 'Window seat',
    customer: 'The reading room',
    date: '2027-03-01',
    validUntil: '2027-03-31',
    materialsMinor: null,
    hours: 0,
    rateMinorPerHour: null,
    markupPercent: 0,
    taxPercent: null,
    note: '',
    sender: '',
    shown: 'price',
    ...more,
  };
}

function quoteOf(more: Partial<Quote>, project: Parameters<typeof aProject>[0] = {}, today = TODAY) {
  const input = aProject(project);
  return planQuote(aQuote(more), { input, plan: plan(input), today });
}

const valuesOf = ({ materials, markup, labour, net, tax, total }: ReturnType<typeof quoteOf>) =>
  [materials, markup, labour, net, tax, total].map(({ value }) => value);

describe('a quote', () => {
  it('is materials with markup, hours at a rate, and tax on both', () => {
    // 400.00, 15 % = 60.00, 20 h x 30.00 = 600.00: 1060.00; 20 % tax 212.00.
    const quote = quoteOf({
      materialsMinor: 40000,
      markupPercent: 15,
      hours: 20,
      rateMinorPerHour: 3000,
      taxPercent: 20,
    });
    expect(valuesOf(quote)).toEqual([40000, 6000, 60000, 106000, 21200, 127200]);
    expect(quote.problems).toEqual([]);
  });

  it('rounds markup, labour and tax half up, each by itself', () => {
    // 12.5 % of 1.00 is 12.5, rounded 13; 0.5 h at 0.01 is 0.5, rounded 1; 8.5 % of 1.14 is 9.69, rounded 10.
    const quote = quoteOf({
      materialsMinor: 100,
      markupPercent: 12.5,
      hours: 0.5,
      rateMinorPerHour: 1,
      taxPercent: 8.5,
    });
    expect(valuesOf(quote)).toEqual([100, 13, 1, 114, 10, 124]);
  });

  it('follows the plan where materials are not agreed, with the deliveries, without tax', () => {
    const project = {
      settings: { taxPercent: 20, currency: 'EUR', rateMinorPerHour: 2000 },
      suppliers: [
        {
          id: 's',
          name: 'Yard',
          leadTimeDays: null,
          currency: 'EUR',
          deliveryMinor: 950,
          freeDeliveryFromMinor: 10000,
          minimumOrderMinor: 5000,
          surchargeMinor: 300,
          workingDays: [0, 1, 2, 3, 4],
          retired: false,
        },
      ],
      extras: [{ ...anExtra('1', 'sheets', 2, 2000), supplierId: 's' }],
    } as const;
    // Goods 40.00, delivery 9.50, below the minimum of 50.00: 3.00 more. 52.50. One hour at the project's 20.00.
    expect(valuesOf(quoteOf({ hours: 1 }, project))).toEqual([5250, 0, 2000, 7250, 1450, 8700]);
    // Goods of 100.00 are delivered free.
    const large = { ...project, extras: [{ ...anExtra('1', 'sheets', 5, 2000), supplierId: 's' }] };
    expect(quoteOf({}, large).materials.value).toBe(10000);
  });

  it('is before tax where no rate is set', () => {
    const quote = quoteOf({ materialsMinor: 1000 });
    expect(valuesOf(quote)).toEqual([1000, 0, 0, 1000, null, 1000]);
    expect(quote.sheet).toMatchObject({ netMinor: 1000, taxPercent: null, taxMinor: null, totalMinor: 1000 });
  });

  it('gives no price rather than half of one', () => {
    const unpriced = quoteOf(
      { taxPercent: 20 },
      { extras: [anExtra('1', 'sheets', 1, null), anExtra('2', 'glue', 1, 500)] },
    );
    expect(valuesOf(unpriced)).toEqual([null, null, 0, null, null, null]);
    expect(unpriced.problems.map(({ code }) => code)).toEqual(['quote-price-missing']);
    const unpaid = quoteOf({ materialsMinor: 100, hours: 3 });
    expect([unpaid.labour.value, unpaid.net.value]).toEqual([null, null]);
    expect(unpaid.problems.map(({ code }) => code)).toEqual(['quote-rate-missing']);
  });

  it('is good on its last day and no longer after it', () => {
    expect(quoteOf({ materialsMinor: 1 }, {}, '2027-03-31').sheet.expired).toBe(false);
    const late = quoteOf({ materialsMinor: 1 }, {}, '2027-04-01');
    expect([late.sheet.expired, late.problems[0]?.code]).toEqual([true, 'quote-expired']);
    expect(quoteOf({ validUntil: '' }).sheet.expired).toBe(null);
    expect(quoteOf({ validUntil: '2027-02-01' }).problems[0]?.code).toBe('quote-dates-backwards');
    expect(quoteOf({ validUntil: 'soon' }).problems[0]?.code).toBe('ledger-date-unreadable');
  });

  it('shows the customer what is built and the price, and nothing of how it came about', () => {
    const rows = [
      { ...aPart({ id: '1', pieces: 2 }).row, name: 'Side', section: 'Case' },
      { ...aPart({ id: '2', pieces: 1 }).row, name: 'Top', section: 'Case' },
      { ...aPart({ id: '3', pieces: 1 }).row, name: '', section: '' },
    ];
    const { sheet } = quoteOf(
      { materialsMinor: 41117, markupPercent: 13, hours: 17, rateMinorPerHour: 2903, taxPercent: 20 },
      { parts: rows },
    );
    expect(sheet.sections).toEqual([
      { name: 'Case', pieces: 3, parts: ['2 x Side', 'Top'] },
      { name: '', pieces: 1, parts: [] },
    ]);
    // Materials 41117, 13 % of them 5345, 17 h x 2903 = 49351: none of these may be told.
    const told = JSON.stringify(sheet);
    for (const secret of ['41117', '5345', '49351', '2903']) expect(told).not.toContain(secret);
    expect(Object.keys(sheet).toSorted()).toEqual([
      'customer',
      'date',
      'expired',
      'lines',
      'netMinor',
      'note',
      'sections',
      'sender',
      'taxMinor',
      'taxPercent',
      'title',
      'totalMinor',
      'validUntil',
    ]);
  });

  it('takes the project’s name where it has no title', () => {
    expect(quoteOf({ title: '' }, { settings: { name: 'Seat' } }).sheet.title).toBe('Seat');
  });

  it('keeps its last cent where a computer cannot hold the decimals', () => {
    // 1.1 h at 0.50 is 0.55; 1.15 h at 1.00 is 1.15, though 1.15 x 100 is 114.99999999999999 in binary.
    const labour = (hours: number, rateMinorPerHour: number) =>
      quoteOf({ materialsMinor: 0, hours, rateMinorPerHour }).labour.value;
    expect([labour(1.1, 50), labour(1.15, 100)]).toEqual([55, 115]);
    // 0.25 h at 0.98 is 0.245, rounded 0.25; at 0.97 it is 0.2425, rounded 0.24.
    expect([labour(0.25, 98), labour(0.25, 97)]).toEqual([25, 24]);
  });

  it('takes a rate of 0 and a tax of 0 for what they are', () => {
    const settings = { rateMinorPerHour: 3000, taxPercent: 8 };
    // 400.00 + 2 h at 30.00 = 460.00; 8 % = 36.80.
    expect(valuesOf(quoteOf({ materialsMinor: 40000, hours: 2 }, { settings }))).toEqual([
      40000, 0, 6000, 46000, 3680, 49680,
    ]);
    const none = { materialsMinor: 40000, hours: 2, rateMinorPerHour: 0, taxPercent: 0 };
    expect(valuesOf(quoteOf(none, { settings }))).toEqual([40000, 0, 0, 40000, 0, 40000]);
  });

  it('refuses a price too large to be kept to the last unit', () => {
    // 100,000 h at 10,000,000,000.00 is 10^17 minor units, beyond 2^53.
    const quote = quoteOf({ materialsMinor: 1, hours: 100_000, rateMinorPerHour: 1_000_000_000_000 });
    expect(quote.total.value).toBeNull();
    expect(quote.problems.map(({ code }) => code)).toEqual(['amount-too-large']);
  });

  it('shows the customer hours and their rate only where it says so', () => {
    const given = { materialsMinor: 40000, markupPercent: 15, hours: 20, rateMinorPerHour: 4517 };
    expect(quoteOf(given).sheet.lines).toEqual([]);
    // Materials with markup 460.00; 20 h at 45.17 = 903.40. What they cost, 400.00, and the markup, 60.00, are not told.
    const { sheet } = quoteOf({ ...given, shown: 'work', sender: 'The shop' });
    expect(sheet.lines).toEqual([
      { kind: 'materials', hours: null, rateMinorPerHour: null, minor: 46000 },
      { kind: 'work', hours: 20, rateMinorPerHour: 4517, minor: 90340 },
    ]);
    expect(sheet.sender).toBe('The shop');
    for (const secret of ['40000', '6000']) expect(JSON.stringify(sheet)).not.toContain(`:${secret}`);
  });

  it('adds up to the last unit, whatever went in and whatever is shown', () => {
    const money = fc.integer({ min: 0, max: 1_000_000_000 });
    const percent = (most: number) =>
      fc.integer({ min: 0, max: most * 10_000 }).map((steps) => steps / 10_000);
    const anyQuote = fc.record({
      materialsMinor: money,
      hours: fc.integer({ min: 0, max: 400_000 }).map((quarters) => quarters / 4),
      rateMinorPerHour: fc.integer({ min: 0, max: 1_000_000 }),
      markupPercent: percent(1000),
      taxPercent: fc.option(percent(100)),
      shown: fc.constantFrom('price' as const, 'work' as const),
    });
    fc.assert(
      fc.property(anyQuote, (given) => {
        const { sheet, ...inner } = quoteOf(given);
        const { lines, netMinor, taxMinor, totalMinor } = sheet;
        expect(lines.length).toBe(given.shown === 'work' ? 2 : 0);
        if (lines.length > 0)
          expect(lines.reduce((sum, { minor }) => sum + (minor ?? Number.NaN), 0)).toBe(netMinor);
        expect(totalMinor).toBe((netMinor ?? Number.NaN) + (taxMinor ?? 0));
        expect(Number.isSafeInteger(totalMinor)).toBe(true);
        const { materials, markup, labour } = inner;
        expect(netMinor).toBe(
          [materials, markup, labour].reduce((sum, { value }) => sum + (value ?? Number.NaN), 0),
        );
        // Never more than half a unit off the exact tax.
        const exact = ((netMinor ?? 0) * (given.taxPercent ?? 0)) / 100;
        expect(Math.abs((taxMinor ?? 0) - exact)).toBeLessThanOrEqual(0.5 + exact * 1e-9);
      }),
      { numRuns: 1000 },
    );
  });
});
