import { existsSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { attachmentPath } from '../../db/attachment-files.ts';
import { readAttachments } from '../../db/attachments.repository.ts';
import { dateInZone } from '../calendar-search/zone-days.ts';
import type { BuyingPlan } from '../planning/buying/buying-plan.ts';
import type { LedgerPlan } from '../planning/ledger/ledger-plan.ts';
import { planLedger } from '../planning/ledger/plan-ledger.ts';
import type { Problem } from '../planning/problem.ts';
import type { Payment } from '../planning/project-input.ts';
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
  { db, plans, calendars, now }: Pick<AppContext, 'db' | 'plans' | 'calendars' | 'now'>,
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
  const problems = [...ledger.problems, ...missingAttachments(db, projectId, input.payments)];
  return { entry, buying, ledger: { ...ledger, problems }, today };
}

/** Payments whose picture or paper is not kept here, such as those of a project that came from another machine. */
function missingAttachments(
  db: Database,
  projectId: number,
  payments: readonly Payment[],
): readonly Problem[] {
  const kept = new Set(readAttachments(db, projectId).map(({ id }) => id));
  return payments
    .filter(
      ({ attachmentId }) =>
        attachmentId !== '' && !(kept.has(attachmentId) && existsSync(attachmentPath(db.name, attachmentId))),
    )
    .map(({ id }) => ({
      code: 'attachment-missing',
      severity: 'warning',
      at: { table: 'payments', id, field: 'attachmentId' },
      message: 'The picture or paper of this payment is not kept on this machine.',
      wayOut: 'Attach it again, or copy the folder of attachments from beside the database it came from.',
    }));
}

/** Minutes of hands-on work of tasks that are not done; null before there is a calendar. */
function handsOnToCome({ plan }: CalendarAnswer): number | null {
  if (plan === null) return null;
  return plan.tasks
    .filter(({ state }) => state === 'planned' || state === 'pinned')
    .reduce((sum, { handsOnMin }) => sum + handsOnMin, 0);
}
