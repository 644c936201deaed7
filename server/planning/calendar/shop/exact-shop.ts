import { type ShopNode, settleShop } from './settle-shop.ts';
import { shopConflict } from './shop-conflict.ts';
import { ShopFloor } from './shop-floor.ts';
import type { ShopJob, ShopSchedule } from './shop-job.ts';
import { jobReady } from './shop-moments.ts';

export interface ExactAnswer {
  /** Ready earliest of all schedules that are ready before the limit; null when none was found. */
  readonly schedule: ShopSchedule | null;
  readonly readyMinute: number;
  /** True when the whole tree was looked at: the schedule is the best there is, or there is none. */
  readonly complete: boolean;
  readonly nodes: number;
}

/**
 * Which schedule is ready earliest, searched to the end?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @param options.readyBefore only schedules ready before this minute count
 * @param options.nodes most parts of the tree to look at
 * @param options.closed working windows not to be used; null for none
 * @param options.anyWillDo stop at the first schedule found
 * @returns the best schedule and whether that is proven
 *
 * Source: branch and bound on recoat intervals and minimal resource conflicts, each part bounded by its least starts
 * (after B. De Reyck, W. Herroelen, European Journal of Operational Research 111, 1998, with clock-dependent lags). A
 * part without conflict is solved by its least starts, because later starts are never ready sooner. Valid range: any
 * job; practical up to some thirty tasks. Departures: none.
 */
export function exactShop(
  job: ShopJob,
  options: {
    readonly readyBefore: number;
    readonly nodes: number;
    readonly closed: ReadonlySet<number> | null;
    readonly anyWillDo: boolean;
  },
): ExactAnswer {
  const floor = new ShopFloor(job);
  floor.closed = options.closed;
  let limit = options.readyBefore;
  let best: ShopSchedule | null = null;
  let nodes = 0;
  const root: ShopNode = {
    start: Float64Array.from(job.tasks, (task) => task.doneFrom ?? 0),
    interval: Int32Array.from(job.tasks, (task) =>
      task.intervals.length === 1 && task.doneFrom === null ? 0 : -1,
    ),
    orders: [],
  };
  const open: ShopNode[] = [root];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (nodes >= options.nodes) return answer(false);
    nodes++;
    const settled: ShopNode = { ...node, start: node.start.slice() };
    if (!settleShop(job, settled, limit, options.closed)) continue;
    const branch = shopConflict(floor, settled);
    if (branch === null) {
      best = { start: Array.from(floor.start), interval: Array.from(floor.interval) };
      limit = jobReady(job, floor.start, floor.interval);
      if (options.anyWillDo) return answer(true);
      continue;
    }
    if (branch.kind === 'intervals')
      for (const choice of branch.choices.toReversed()) {
        const interval = settled.interval.slice();
        interval[branch.task] = choice;
        open.push({ ...settled, interval });
      }
    else
      for (const order of branch.orders.toReversed())
        open.push({ ...settled, orders: [...settled.orders, order] });
  }
  return answer(true);

  function answer(complete: boolean): ExactAnswer {
    return { schedule: best, readyMinute: best === null ? Number.POSITIVE_INFINITY : limit, complete, nodes };
  }
}
