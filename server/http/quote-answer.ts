import { dateInZone } from '../calendar-search/zone-days.ts';
import { planQuote } from '../planning/ledger/plan-quote.ts';
import type { AppContext } from './app-context.ts';
import type { QuoteAnswer } from './contract.ts';
import { HttpRefusal } from './http-refusal.ts';

/** One quote of a project as it stands today where the shop is. Refused where there is no such project or quote. */
export function quoteAnswer(
  projectId: number,
  quoteId: string,
  { plans, now }: Pick<AppContext, 'plans' | 'now'>,
): QuoteAnswer {
  const { input, plan, project } = plans.current(projectId);
  const quote = input.quotes.find(({ id }) => id === quoteId);
  if (quote === undefined)
    throw new HttpRefusal(
      'not-found',
      `This project has no quote ${quoteId}.`,
      'Choose one of its quotes, or undo its deletion.',
    );
  const today = dateInZone(now(), input.settings.timeZone);
  return {
    revision: project.revision,
    currency: input.settings.currency,
    ...planQuote(quote, { input, plan, today }),
  };
}
