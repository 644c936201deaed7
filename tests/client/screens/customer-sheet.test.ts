import fc from 'fast-check';
import { nothing, type TemplateResult } from 'lit-html';
import { describe, expect, it } from 'vitest';
import { formatsFor } from '../../../client/format/formats.ts';
import { customerSheet } from '../../../client/screens/quotes/customer-sheet.ts';
import type { QuotePlan } from '../../../server/planning/ledger/ledger-plan.ts';
import { planQuote } from '../../../server/planning/ledger/plan-quote.ts';
import { plan } from '../../../server/planning/plan.ts';
import type { Quote } from '../../../server/planning/project-input.ts';
import { aProject } from '../../planning/finish/sample-project.ts';

const input = aProject({ settings: { name: 'Seat', currency: 'USD', taxPercent: null } });
const planned = plan(input);
const formats = formatsFor(input.settings);

const QUOTE: Quote = {
  id: '1',
  title: '',
  customer: '',
  date: '',
  validUntil: '',
  materialsMinor: 0,
  hours: 0,
  rateMinorPerHour: null,
  markupPercent: 0,
  taxPercent: null,
  note: '',
  sender: '',
  shown: 'price',
};

function quoted(more: Partial<Quote>): QuotePlan {
  return planQuote({ ...QUOTE, ...more }, { input, plan: planned, today: '2027-03-10' });
}

/** Everything a template puts into the page: its markup and the values in it, in their order. */
function pageText(part: unknown): string {
  if (part === nothing || part === null || part === undefined) return '';
  if (Array.isArray(part)) return part.map(pageText).join('');
  if (typeof part === 'object' && 'strings' in part) {
    const { strings, values } = part as TemplateResult;
    return strings.map((text, index) => text + pageText(values[index])).join('');
  }
  return String(part);
}

const sheetText = (quote: QuotePlan): string =>
  pageText(customerSheet(quote.sheet, formats)).replaceAll(/\s+/g, ' ');

/** Amounts printed on the sheet, in minor units, in their order. */
const amounts = (text: string): number[] =>
  [...text.matchAll(/\$([\d,]+)\.(\d\d)/g)].map(([, whole = '', cents = '']) =>
    Number(whole.replaceAll(',', '') + cents),
  );

describe('the sheet for the customer', () => {
  it('prints the price, the tax and what they come to', () => {
    // 400.00 + 15 % = 460.00; 20 h at 45.00 = 900.00: 1360.00; 6 % = 81.60: 1441.60.
    const given = {
      materialsMinor: 40_000,
      markupPercent: 15,
      hours: 20,
      rateMinorPerHour: 4500,
      taxPercent: 6,
    };
    expect(amounts(sheetText(quoted(given)))).toEqual([136_000, 8160, 144_160]);
    const work = sheetText(quoted({ ...given, shown: 'work' }));
    expect(amounts(work)).toEqual([46_000, 4500, 90_000, 136_000, 8160, 144_160]);
    expect(work).toContain('20 h at $45.00');
  });

  it('adds up as printed, and holds no inner amount, whatever went in', () => {
    const anyQuote = fc.record({
      materialsMinor: fc.integer({ min: 0, max: 10_000_000 }),
      hours: fc.integer({ min: 0, max: 400 }).map((quarters) => quarters / 4),
      rateMinorPerHour: fc.integer({ min: 1, max: 20_000 }),
      markupPercent: fc.integer({ min: 1, max: 200 }),
      taxPercent: fc.option(fc.integer({ min: 0, max: 25 })),
      shown: fc.constantFrom('price' as const, 'work' as const),
    });
    fc.assert(
      fc.property(anyQuote, (given) => {
        const quote = quoted(given);
        const text = sheetText(quote);
        const printed = amounts(text);
        const total = printed.at(-1) ?? Number.NaN;
        if (given.taxPercent !== null) {
          const [net = Number.NaN, tax = Number.NaN] = printed.slice(-3);
          expect(net + tax).toBe(total);
        }
        const told = new Set([quote.net.value, quote.tax.value, quote.total.value]);
        if (given.shown === 'work') {
          const work = quote.labour.value ?? Number.NaN;
          const sold = (quote.materials.value ?? Number.NaN) + (quote.markup.value ?? Number.NaN);
          expect(sold + work).toBe(quote.net.value);
          for (const shown of [sold, work, given.rateMinorPerHour]) told.add(shown);
        }
        // Nothing is printed but what may be told.
        expect(printed.filter((amount) => !told.has(amount))).toEqual([]);
        expect(text).not.toMatch(/markup|figure|working|margin/i);
      }),
      { numRuns: 500 },
    );
  });

  it('is marked once it has expired, and says what is not known', () => {
    expect(sheetText(quoted({ validUntil: '2027-03-09' }))).toContain('This quote expired on');
    expect(sheetText(quoted({ validUntil: '2027-03-10' }))).toContain('Valid until');
    const unknown = sheetText(quoted({ hours: 3, taxPercent: 6 }));
    expect(unknown).toContain('not known yet');
    expect(amounts(unknown)).toEqual([]);
  });

  it('keeps the words of its maker, and leaves out what is empty', () => {
    const text = sheetText(quoted({ sender: 'The shop', note: 'Hung on your wall', customer: 'A. Reader' }));
    for (const words of ['The shop', 'Hung on your wall', 'For A. Reader', 'Quote: Seat'])
      expect(text).toContain(words);
    const bare = sheetText(quoted({}));
    expect(bare).not.toContain('<header>');
    expect(bare).not.toContain('For ');
    expect(bare).not.toContain('Valid until');
  });
});
