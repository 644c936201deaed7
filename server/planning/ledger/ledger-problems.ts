import type { Problem } from '../problem.ts';
import type { ProjectInput } from '../project-input.ts';
import type { LedgerEntries } from './ledger-entries.ts';
import { budgetProblems } from './problems/budget-problems.ts';
import { dateProblems } from './problems/date-problems.ts';
import { orderMoneyProblems } from './problems/order-money-problems.ts';
import { paymentProblems } from './problems/payment-problems.ts';

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
    ...budgetProblems(input),
    ...entries.orders.flatMap((order) => orderMoneyProblems(order, input.settings.currency)),
    ...paymentProblems(input),
  ];
}
