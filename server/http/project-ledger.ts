import { dateInZone } from '../calendar-search/zone-days.ts';
import type { BuyingPlan } from '../planning/buying/buying-plan.ts';
import type { LedgerPlan } from '../planning/ledger/ledger-plan.ts';
import { planLedger } from '../planning/ledger/plan-ledger.ts';
import type { AppContext } from './app-context.ts';
import type { CalendarAnswer } from './contract.ts';
import { projectBuying } from './project-buying.ts';
import type { PlannedProject } from './project-plans.ts';

export interface LedgerToday {
  readonly entry: PlannedProject;
  readonly buying: BuyingPlan;
  readonly ledger: LedgerPlan;
  /** YYYY-MM-DD in the project's time zone. */
  readonly today: string;
}

/** The ledger of a project as it stands today. Throws Refusal when there is no such project. */
export function projectLedger(
  projectId: number,
  { plans, calendars, now }: Pick<AppContext, 'plans' | 'calendars' | 'now'>,
): LedgerToday {
  const entry = plans.current(projectId);
  const { input, plan } = entry;
  const today = dateInZone(now(), input.settings.timeZone);
  const buying = projectBuying({ plans, calendars, now }, projectId);
  const ledger = planLedger({
    input,
    plan,
    buying,
    handsOnMin: handsOnToCome(calendars.state(projectId)),
    today,
  });
  return { entry, buying, ledger, today };
}

/** Minutes of hands-on work of tasks that are not done; null before there is a calendar. */
function handsOnToCome({ plan }: CalendarAnswer): number | null {
  if (plan === null) return null;
  return plan.tasks
    .filter(({ state }) => state === 'planned' || state === 'pinned')
    .reduce((sum, { handsOnMin }) => sum + handsOnMin, 0);
}
