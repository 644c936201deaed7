import { taxOnLine } from '../buying/tax-on-line.ts';
import { type Figure, figure, type WorkingInput } from '../figure.ts';
import type { Plan } from '../plan-output.ts';
import type { ProjectInput, Quote } from '../project-input.ts';
import { MILLION, PERCENT_STEPS, WHOLE_IN_PERCENT_STEPS } from './constants.ts';
import { customerSheet } from './customer-sheet.ts';
import { fractionHalfUp } from './fraction-half-up.ts';
import type { QuotePlan } from './ledger-plan.ts';
import { plannedItems } from './planned-items.ts';
import { quoteProblems } from './quote-problems.ts';
import { sumMinor } from './sum-minor.ts';
import { usableTax } from './usable-tax.ts';

/**
 * What does a quote come to?
 *
 * net = materials + materials x markup + hours x rate; tax on the net; total = net + tax. Markup, labour and tax are each
 * rounded half up.
 *
 * @param today YYYY-MM-DD
 * @returns whole minor units, without tax but for the total; and the customer's sheet, which holds no inner cost. Materials
 *   that are not agreed follow the plan: everything on the buy list with one delivery by each supplier, without tax. What is
 *   not known makes the net and the total unknown: a price is given in full or not at all.
 *
 * Source: common practice, no source (materials, markup, hours, tax).
 * Example: materials 400.00, markup 15 %, 20 h at 30.00, tax 20 %: 400 + 60 + 600 = 1060.00, tax 212.00, total 1272.00.
 */
export function planQuote(
  quote: Quote,
  {
    input,
    plan,
    today,
  }: {
    readonly input: ProjectInput;
    readonly plan: Pick<Plan, 'buy' | 'parts'>;
    readonly today: string;
  },
): QuotePlan {
  const path = `quotes/${quote.id}`;
  const materials = materialsOf(quote, input, plan);
  const markup = rounded(
    'markup = materials x percent, rounded half up',
    materials.value,
    [Math.round(quote.markupPercent * PERCENT_STEPS), WHOLE_IN_PERCENT_STEPS],
    [
      { name: 'materials', value: materials.value, unit: 'minor', from: `${path}/materials` },
      { name: 'markup', value: quote.markupPercent, unit: 'percent' },
    ],
  );
  const rate = quote.rateMinorPerHour ?? input.settings.rateMinorPerHour;
  const labour = rounded(
    'labour = hours x rate, rounded half up',
    quote.hours === 0 ? 0 : rate,
    [Math.round(quote.hours * MILLION), MILLION],
    [
      { name: 'hours', value: quote.hours, unit: '' },
      {
        name: 'rate for an hour',
        value: rate,
        unit: 'minor',
        source: quote.rateMinorPerHour === null ? 'project setting' : 'entered in the quote',
      },
    ],
  );
  const sold = allKnown(path, 'materials as sold = materials + markup', [
    ['materials', materials],
    ['markup', markup],
  ]);
  const net = allKnown(path, 'net = materials + markup + labour', [
    ['materials', materials],
    ['markup', markup],
    ['labour', labour],
  ]);
  const taxPercent = usableTax(quote.taxPercent ?? input.settings.taxPercent);
  const tax = taxOf(path, net, taxPercent);
  const total =
    taxPercent === null
      ? figure(net.value, 'minor', {
          rule: 'total = net',
          inputs: [{ name: 'net', value: net.value, unit: 'minor', from: `${path}/net` }],
          notes: ['Before tax: no tax rate is set.'],
        })
      : allKnown(path, 'total = net + tax', [
          ['net', net],
          ['tax', tax],
        ]);
  const figures = { materials, markup, labour, net, tax, total };
  return {
    id: quote.id,
    ...figures,
    sheet: customerSheet(quote, {
      input,
      parts: plan.parts,
      sold,
      labour,
      rateMinorPerHour: rate,
      net,
      taxPercent,
      tax,
      total,
      today,
    }),
    problems: quoteProblems(quote, { ...figures, rateMinorPerHour: rate, today }),
  };
}

function materialsOf(quote: Quote, input: ProjectInput, { buy }: Pick<Plan, 'buy'>): Figure {
  if (quote.materialsMinor !== null)
    return figure(quote.materialsMinor, 'minor', {
      rule: 'materials as agreed, without tax, entered in the quote',
      inputs: [],
    });
  const items = plannedItems(buy.lines, input.catalogue, input.settings.currency, null);
  const sum = sumMinor(
    'materials = sum of the lines of the plan and of their delivery, without tax',
    'lines',
    items.map(({ name, netMinor, from }) => ({
      name,
      value: netMinor,
      ...(from === undefined ? {} : { from }),
    })),
  );
  if (items.every(({ netMinor }) => netMinor !== null)) return sum;
  return { ...sum, value: null };
}

/** A fraction of an amount; unknown where the amount is, or where it is more than can be kept exactly. */
function rounded(
  rule: string,
  minor: number | null,
  [numerator, denominator]: readonly [number, number],
  inputs: readonly WorkingInput[],
): Figure {
  const value = minor === null ? null : fractionHalfUp(minor, numerator, denominator);
  return figure(value !== null && Number.isSafeInteger(value) ? value : null, 'minor', { rule, inputs });
}

function allKnown(path: string, rule: string, summands: readonly (readonly [string, Figure])[]): Figure {
  const missing = summands.find(([, { value }]) => value === null);
  if (missing === undefined)
    return sumMinor(
      rule,
      'amounts',
      summands.map(([name, { value }]) => ({ name, value, from: `${path}/${name}` })),
    );
  return figure(null, 'minor', {
    rule,
    inputs: summands.map(([name, { value }]) => ({ name, value, unit: 'minor', from: `${path}/${name}` })),
    notes: [`Not known, since ${missing[0]} is not.`],
  });
}

function taxOf(path: string, net: Figure, taxPercent: number | null): Figure {
  const known = net.value !== null && taxPercent !== null;
  return figure(
    known ? taxOnLine({ lineMinor: net.value ?? 0, taxPercent: taxPercent ?? 0 }) : null,
    'minor',
    {
      rule: 'tax = net x rate, rounded half up',
      inputs: [
        { name: 'net', value: net.value, unit: 'minor', from: `${path}/net` },
        { name: 'tax rate', value: taxPercent, unit: 'percent' },
      ],
      ...(taxPercent === null ? { notes: ['No tax rate is set; the price is before tax.'] } : {}),
    },
  );
}
