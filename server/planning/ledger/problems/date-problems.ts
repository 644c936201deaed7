import { isDate } from '../../calendar/is-date.ts';
import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import { ledgerProblem } from './ledger-problem.ts';

/**
 * Which entries of the ledger have no date, or one that is none?
 *
 * @returns a problem per such cell
 *
 * Source: definition.
 */
export function dateProblems({ orders, payments, receipts, workHours }: ProjectInput): readonly Problem[] {
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
          ? ledgerProblem(
              'ledger-date-missing',
              'note',
              [table, id, 'date'],
              `This ${what} has no date, so in the course of the spending it counts from the first day on.`,
              'Enter its date.',
            )
          : ledgerProblem(
              'ledger-date-unreadable',
              'error',
              [table, id, 'date'],
              `"${date}" is not a day that exists, so this ${what} counts as one without a date.`,
              'Write it as 2027-03-14.',
            ),
      ),
  );
}
