import { formatMoney } from '../../display/format-money.ts';
import type { Problem } from '../../problem.ts';
import { orderName } from '../ledger-entries.ts';
import type { OrderReckoning } from '../reckon-order.ts';
import { ledgerProblem } from './ledger-problem.ts';

/**
 * What is doubtful about the money of an order?
 *
 * @param currency ISO 4217 code of the project
 * @returns lines without a price, beyond reckoning or sent back more than ordered; and an order paid above what it comes to
 *
 * Source: definition.
 */
export function orderMoneyProblems(order: OrderReckoning, currency: string): readonly Problem[] {
  const problems = order.lines.flatMap(({ line, returned, totalMinor }) => {
    const name = line.name || 'without a name';
    const price = line.invoicedPriceMinor ?? line.unitPriceMinor;
    return [
      ...(returned > line.count
        ? [
            ledgerProblem(
              'returned-too-many',
              'warning',
              ['orderLines', line.id, 'count'],
              `Of the line "${name}", ${returned} packs were sent back but only ${line.count} ordered.`,
              'Correct the returns, or the packs ordered. Until then none counts as kept.',
            ),
          ]
        : []),
      ...(price === null
        ? [
            ledgerProblem(
              'price-missing',
              'warning',
              ['orderLines', line.id, 'unitPriceMinor'],
              `The order line "${name}" has no price, so what is ordered is without it.`,
              'Enter the price agreed for one pack, without tax.',
            ),
          ]
        : totalMinor === null
          ? [
              ledgerProblem(
                'amount-too-large',
                'error',
                ['orderLines', line.id, 'unitPriceMinor'],
                `The order line "${name}" comes to more than can be reckoned with, so it is left out.`,
                'Correct its price or its number of packs.',
              ),
            ]
          : []),
    ];
  });
  const known = order.lines.every(({ totalMinor }) => totalMinor !== null);
  const total =
    order.lines.reduce((sum, { totalMinor }) => sum + (totalMinor ?? 0), 0) +
    order.charges.reduce((sum, { netMinor, taxMinor }) => sum + netMinor + taxMinor, 0);
  const exact = Number.isSafeInteger(total) && Number.isSafeInteger(order.paidMinor);
  if (known && exact && order.paidMinor > total && order.lines.length > 0)
    problems.push(
      ledgerProblem(
        'order-overpaid',
        'note',
        ['orders', order.order.id, null],
        `The ${orderName(order)} comes to ${formatMoney(total, currency)}, but ${formatMoney(order.paidMinor, currency)} is paid.`,
        'Enter the refund when it comes, or correct the payment.',
      ),
    );
  return problems;
}
