import { currencyDigits } from '../../planning/display/currency-digits.ts';
import type { LedgerAnswer } from '../contract.ts';
import { ledgerAnswerSchema } from '../ledger-schemas.ts';
import { projectLedger } from '../project-ledger.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

/** What a project may cost, costs and will cost. */
export const ledgerRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/projects/{id}/ledger',
    summary:
      'Budget, planned, ordered, paid, left and forecast by heading; cost per part and section; spending by date.',
    group: 'plan',
    params: projectParams,
    answer: ledgerAnswerSchema,
    handle({ params }, context): LedgerAnswer {
      const { entry, ledger, today } = projectLedger(Number(params.id), context);
      const { currency } = entry.input.settings;
      return {
        revision: entry.project.revision,
        today,
        currency,
        currencyDigits: currencyDigits(currency),
        ...ledger,
      };
    },
  }),
];
