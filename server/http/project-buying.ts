import { dateInZone } from '../calendar-search/zone-days.ts';
import { planPurchases } from '../planning/buying/plan-purchases.ts';
import type { AppContext } from './app-context.ts';
import { buyingCalendar } from './buying-calendar.ts';
import type { BuyingAnswer } from './contract.ts';

/** What is to be ordered, what is on its way and what is there, on today's date in the project's time zone. */
export function projectBuying(
  { plans, calendars, now }: Pick<AppContext, 'plans' | 'calendars' | 'now'>,
  projectId: number,
): BuyingAnswer {
  const { project, fullInput, uncut, plan } = plans.current(projectId);
  return {
    revision: project.revision,
    ...planPurchases({
      input: { ...fullInput, onHand: fullInput.onHand.filter(({ id }) => !uncut.has(id)) },
      plan,
      today: dateInZone(now(), project.settings.timeZone),
      calendar: buyingCalendar(calendars.state(projectId)),
    }),
  };
}
