import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import { groupRows } from '../group-rows.ts';
import { ledgerProblem } from './ledger-problem.ts';

/**
 * Which headings have more than one budget?
 *
 * @returns a problem per further one
 *
 * Source: definition.
 */
export function budgetProblems({ budgets }: ProjectInput): readonly Problem[] {
  return [...groupRows(budgets, ({ category }) => category)].flatMap(([category, rows]) =>
    rows
      .slice(1)
      .map(({ id }) =>
        ledgerProblem(
          'budget-twice',
          'note',
          ['budgets', id, 'category'],
          `There are ${rows.length} budgets for ${category}; they are added up.`,
          'Delete one if it is there twice by mistake.',
        ),
      ),
  );
}
