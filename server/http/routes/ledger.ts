import { z } from 'zod';
import { currencyDigits } from '../../planning/display/currency-digits.ts';
import type { CustomerSheetAnswer, LedgerAnswer, QuoteAnswer } from '../contract.ts';
import { customerSheetAnswerSchema, ledgerAnswerSchema, quoteAnswerSchema } from '../ledger-schemas.ts';
import { projectLedger } from '../project-ledger.ts';
import { quoteAnswer } from '../quote-answer.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

const quoteParams = projectParams.extend({
  quoteId: z.string().regex(/^\d{1,15}$/, 'must be the number of a row'),
});

/** What a project may cost, costs and will cost, and what is asked for it. */
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
  route({
    method: 'get',
    path: '/api/projects/{id}/quotes/{quoteId}',
    summary: 'A quote worked out, with its inner costs; its sheet alone is what the customer sees.',
    group: 'plan',
    params: quoteParams,
    answer: quoteAnswerSchema,
    handle: ({ params }, context): QuoteAnswer => quoteAnswer(Number(params.id), params.quoteId, context),
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/quotes/{quoteId}/sheet',
    summary: 'What the customer sees of a quote, and nothing of its inner costs.',
    group: 'plan',
    params: quoteParams,
    answer: customerSheetAnswerSchema,
    handle({ params }, context): CustomerSheetAnswer {
      const { sheet, currency } = quoteAnswer(Number(params.id), params.quoteId, context);
      return { ...sheet, currency };
    },
  }),
];
