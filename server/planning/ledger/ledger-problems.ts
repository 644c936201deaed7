import { isDate } from '../calendar/is-date.ts';
import { formatMoney } from '../display/format-money.ts';
import type { Problem, ProblemCode, ProblemTable, Severity } from '../problem.ts';
import type { ProjectInput } from '../project-input.ts';
import { groupRows } from './group-rows.ts';
import { type LedgerEntries, orderName } from './ledger-entries.ts';
import type { OrderReckoning } from './reckon-order.ts';

/**
 * What is doubtful about what was entered into the ledger?
 *
 * @returns a problem per doubtful cell; everything else is reckoned all the same
 *
 * Source: definition.
 */
export function ledgerProblems(input: ProjectInput, entries: LedgerEntries): readonly Problem[] {
  return [
    ...dateProblems(input),
    ...budgetsTwice(input),
    ...entries.orders.flatMap((order) => orderProblems(order, input.settings.currency)),
    ...paymentProblems(input),
  ];
}

function problem(
  code: ProblemCode,
  severity: Severity,
  [table, id, field]: readonly [ProblemTable, string, string | null],
  message: string,
  wayOut: string,
): Problem {
  return { code, severity, at: { table, id, field }, message, wayOut };
}

function dateProblems({ orders, payments, receipts, workHours }: ProjectInput): readonly Problem[] {
  const tables = [
    ['orders', 'order', orders],
    ['payments', 'payment', payments],
    ['receipts', 'delivery', receipts],
    ['workHours', 'entry of hours', workHours],
  ] as const;
  return tables.flatMap(([table, what, rows]) =>
    rows
      .filter(({ date }) => !isDate(date))
      .map(({ id, date }) =>
        date === ''
          ? problem(
              'ledger-date-missing',
              'note',
              [table, id, 'date'],
              `This ${what} has no date, so in the course of the spending it counts from the first day on.`,
              'Enter its date.',
            )
          : problem(
              'ledger-date-unreadable',
              'error',
              [table, id, 'date'],
              `"${date}" is not a day that exists, so this ${what} counts as one without a date.`,
              'Write it as 2027-03-14.',
            ),
      ),
  );
}

function budgetsTwice({ budgets }: ProjectInput): readonly Problem[] {
  return [...groupRows(budgets, ({ category }) => category)].flatMap(([category, rows]) =>
    rows
      .slice(1)
      .map(({ id }) =>
        problem(
          'budget-twice',
          'note',
          ['budgets', id, 'category'],
          `There are ${rows.length} budgets for ${category}; they are added up.`,
          'Delete one if it is there twice by mistake.',
        ),
      ),
  );
}

function orderProblems(order: OrderReckoning, currency: string): readonly Problem[] {
  const problems = order.lines.flatMap(({ line, returned, totalMinor }) => {
    const name = line.name || 'without a name';
    const price = line.invoicedPriceMinor ?? line.unitPriceMinor;
    return [
      ...(returned > line.count
        ? [
            problem(
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
            problem(
              'price-missing',
              'warning',
              ['orderLines', line.id, 'unitPriceMinor'],
              `The order line "${name}" has no price, so what is ordered is without it.`,
              'Enter the price agreed for one pack, without tax.',
            ),
          ]
        : totalMinor === null
          ? [
              problem(
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
      problem(
        'order-overpaid',
        'note',
        ['orders', order.order.id, null],
        `The ${orderName(order)} comes to ${formatMoney(total, currency)}, but ${formatMoney(order.paidMinor, currency)} is paid.`,
        'Enter the refund when it comes, or correct the payment.',
      ),
    );
  return problems;
}

function paymentProblems({ settings, orders, payments }: ProjectInput): readonly Problem[] {
  const known = new Set(orders.map(({ id }) => id));
  return payments.flatMap(({ id, orderId, amountMinor, taxMinor }) => [
    ...(orderId === '' || known.has(orderId)
      ? []
      : [
          problem(
            'payment-order-unknown',
            'warning',
            ['payments', id, 'orderId'],
            'This payment is for an order that the project does not have, so it counts as bought without one.',
            'Choose the order, or none.',
          ),
        ]),
    ...(taxMinor !== null && taxMinor > amountMinor
      ? [
          problem(
            'payment-tax-too-large',
            'warning',
            ['payments', id, 'taxMinor'],
            `The tax in this payment, ${formatMoney(taxMinor, settings.currency)}, is more than the payment, ${formatMoney(amountMinor, settings.currency)}.`,
            'Enter the tax that is contained in the amount.',
          ),
        ]
      : []),
  ]);
}
