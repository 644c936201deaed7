import { type Figure, figure } from '../../figure.ts';
import type { SupplierChoiceResult } from '../buying-plan.ts';
import type { SuppliersChoice } from './choose-suppliers.ts';

/**
 * How does a choice of suppliers read?
 *
 * @param choice totals in whole minor units without tax
 * @param openLines lines with something to order, @param pricedLines of which have a known cost
 * @param unknownDelivery names of the suppliers ordered from whose delivery charge is not known
 * @returns the figures with their workings
 *
 * Source: `chooseSuppliers`; nothing is computed here. Valid range: any. Departures: none.
 */
export function choiceFigures({
  choice: { totalMinor, boundMinor, lineByLineMinor, proven },
  openLines,
  pricedLines,
  unknownDelivery,
}: {
  readonly choice: Omit<SuppliersChoice, 'chosen'>;
  readonly openLines: number;
  readonly pricedLines: number;
  readonly unknownDelivery: readonly string[];
}): SupplierChoiceResult {
  const notes = [
    ...(pricedLines < openLines
      ? [`At least: ${openLines - pricedLines} of ${openLines} lines have no known cost.`]
      : []),
    ...(unknownDelivery.length === 0
      ? []
      : [`The delivery charge of ${unknownDelivery.join(', ')} is not known and counts as none.`]),
  ];
  const minor = (value: number, rule: string, inputs: Figure['working']['inputs'], more: readonly string[]) =>
    figure(value, 'minor', { rule, inputs, ...(more.length === 0 ? {} : { notes: more }) });
  return {
    total: minor(
      totalMinor,
      'least total = goods + delivery + surcharges over every choice of one supplier per line, without tax',
      [
        {
          name: 'each line where it is cheapest, charges included',
          value: lineByLineMinor,
          unit: 'minor',
          from: 'buying/choice/lineByLine',
        },
        { name: 'saved by choosing together', value: lineByLineMinor - totalMinor, unit: 'minor' },
      ],
      [
        proven ? 'Proven: no choice costs less.' : 'Not proven: the search was cut short.',
        'Nothing is bought beyond the need for the sake of free delivery.',
        ...notes,
      ],
    ),
    bound: minor(boundMinor, 'no choice of suppliers costs less', [], notes),
    proven,
    lineByLine: minor(
      lineByLineMinor,
      'goods each from where they are cheapest + delivery + surcharges, without tax',
      [],
      notes,
    ),
  };
}
