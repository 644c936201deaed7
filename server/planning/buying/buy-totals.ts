import { type Figure, figure } from '../figure.ts';
import { sumFigure } from '../finish/sum-figure.ts';
import type { BuyLine, BuyPlan } from '../plan-output.ts';
import { taxOnLine } from './tax-on-line.ts';

/**
 * What do the lines of the buy list come to?
 *
 * @param lines lines with costs in whole minor units, without tax
 * @param taxPercent percent on every line; null when the user has not said
 * @returns net, tax and total in whole minor units. Tax is reckoned and rounded line by line, so the total is the sum of
 *   rounded lines. Without a rate, tax is unknown and the total is the net: "before tax". While lines have no known
 *   cost the sums are "at least", and the notes say so; they are unknown when no line has one.
 *
 * Source: definition and `taxOnLine`.
 * Example: lines of 100 and 250 at 8.5 %: tax 9 + 21 = 30, total 380.
 */
export function buyTotals(
  lines: readonly BuyLine[],
  taxPercent: number | null,
): Pick<BuyPlan, 'netMinor' | 'taxMinor' | 'totalMinor' | 'unpricedLines'> {
  const unpriced = lines.filter(({ cost }) => cost.value === null).length;
  const atLeast =
    unpriced === 0 ? [] : [`At least: ${unpriced} of ${lines.length} lines have no known cost.`];
  const netMinor = sumFigure({
    rule: 'net = sum of the lines, without tax',
    unit: 'minor',
    noun: 'lines',
    summands: lines.map(({ id, name, cost }) => ({ name, value: cost.value, from: `buy/lines/${id}/cost` })),
    notes: atLeast,
  });
  const taxMinor = taxFigure(lines, taxPercent, atLeast);
  return {
    netMinor,
    taxMinor,
    totalMinor: figure(netMinor.value === null ? null : netMinor.value + (taxMinor.value ?? 0), 'minor', {
      rule: 'total = net + tax',
      inputs: [
        { name: 'net', value: netMinor.value, unit: 'minor', from: 'buy/netMinor' },
        { name: 'tax', value: taxMinor.value, unit: 'minor', from: 'buy/taxMinor' },
      ],
      notes: [...(taxPercent === null ? ['Before tax: no tax rate is set.'] : []), ...atLeast],
    }),
    unpricedLines: figure(unpriced, 'pcs', { rule: 'lines whose cost is not known', inputs: [] }),
  };
}

function taxFigure(lines: readonly BuyLine[], taxPercent: number | null, atLeast: readonly string[]): Figure {
  const rule = 'tax = sum over the lines of (line x rate, rounded half up)';
  if (taxPercent === null)
    return figure(null, 'minor', { rule, inputs: [], notes: ['No tax rate is set; prices are before tax.'] });
  const taxed = sumFigure({
    rule,
    unit: 'minor',
    noun: 'lines',
    summands: lines.map(({ name, cost }) => ({
      name: `tax on ${name}`,
      value: cost.value === null ? null : taxOnLine({ lineMinor: cost.value, taxPercent }),
    })),
    notes: atLeast,
  });
  return {
    ...taxed,
    working: {
      ...taxed.working,
      inputs: [
        { name: 'tax rate', value: taxPercent, unit: 'percent', source: 'project setting' },
        ...taxed.working.inputs,
      ],
    },
  };
}
