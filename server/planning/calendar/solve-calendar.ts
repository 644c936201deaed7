import type { CalendarBatch } from './calendar-batch.ts';
import type { CalendarInput } from './calendar-input.ts';
import { type CalendarTasks, calendarTasks } from './calendar-tasks.ts';
import {
  EXACT_TASKS,
  FULL_BUDGET_TASKS,
  FULL_NODES_TASKS,
  MINUTE_DUST,
  NODES_PER_ITERATION,
  PROBE_ITERATIONS,
} from './constants.ts';
import { exactShop } from './shop/exact-shop.ts';
import { fewestVisits } from './shop/fewest-visits.ts';
import { searchShop } from './shop/search-shop.ts';
import { type ShopBound, shopBound } from './shop/shop-bound.ts';
import type { ShopJob, ShopSchedule } from './shop/shop-job.ts';
import { shopJobOf } from './shop/shop-job-of.ts';
import { visitsOf } from './shop/visits-of.ts';

export interface SolvedCalendar {
  readonly job: ShopJob;
  readonly batches: readonly CalendarBatch[];
  readonly problems: CalendarTasks['problems'];
  readonly schedule: ShopSchedule | null;
  /** Infinity when there is no schedule. */
  readonly readyMinute: number;
  readonly bound: ShopBound;
  /** No schedule is ready sooner; or, without a schedule, there is none. */
  readonly proven: boolean;
  readonly visits: number;
  readonly visitsProven: boolean;
}

/**
 * Which schedule is ready earliest, and of those, which needs the fewest visits to the shop?
 *
 * @param input see calendar-input.ts; minutes since midnight of day 0
 * @param aim `best`; or `any`: whether anything fits, with as little search as that takes
 * @returns the schedule found, what is proven about it, and the bound
 *
 * Source: searchShop for a good schedule, then exactShop and fewestVisits for jobs small enough to be searched to the
 * end. Valid range: see planCalendar. Departures: the budget of large jobs is cut, as building one schedule takes time
 * with the square of the tasks. Example: see planCalendar.
 */
export function solveCalendar(input: CalendarInput, aim: 'best' | 'any' = 'best'): SolvedCalendar {
  const { batches, problems } = calendarTasks(input);
  const job = shopJobOf(input, batches);
  const bound = shopBound(job);
  const none = { job, batches, problems, bound, schedule: null, readyMinute: Number.POSITIVE_INFINITY };
  if (bound.readyMinute === Number.POSITIVE_INFINITY)
    return { ...none, proven: true, visits: 0, visitsProven: false };

  const share = Math.min(1, (FULL_BUDGET_TASKS / Math.max(1, job.tasks.length)) ** 2);
  const iterations = Math.max(1, Math.round((aim === 'any' ? PROBE_ITERATIONS : input.iterations) * share));
  const found = searchShop(job, bound, { seed: input.seed, iterations });
  let { schedule, readyMinute } = found;
  let proven = readyMinute <= bound.readyMinute + MINUTE_DUST;
  const nodes = Math.round(
    iterations * NODES_PER_ITERATION * Math.min(1, (FULL_NODES_TASKS / job.tasks.length) ** 2),
  );
  const small = job.tasks.length <= EXACT_TASKS;
  if (!proven && small && (aim === 'best' || schedule === null)) {
    const readyBefore = readyMinute - MINUTE_DUST;
    const exact = exactShop(job, { readyBefore, nodes, closed: null, anyWillDo: aim === 'any' });
    proven = exact.complete;
    if (exact.schedule !== null) ({ schedule, readyMinute } = exact);
  }
  if (schedule === null) return { ...none, proven, visits: 0, visitsProven: false };
  let visitsProven = visitsOf(job, schedule.start).size <= 1;
  if (small && !visitsProven && aim === 'best') {
    const fewest = fewestVisits(job, schedule, readyMinute, nodes);
    schedule = fewest.schedule;
    visitsProven = fewest.proven && proven;
  }
  const visits = visitsOf(job, schedule.start).size;
  return { ...none, schedule, readyMinute, proven, visits, visitsProven };
}
