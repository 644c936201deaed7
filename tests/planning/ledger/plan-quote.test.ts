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
      'netMinor',
      'note',
      'sections',
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
});
