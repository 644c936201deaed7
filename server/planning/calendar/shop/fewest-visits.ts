import { MINUTE_DUST } from '../constants.ts';
import { exactShop } from './exact-shop.ts';
import type { ShopJob, ShopSchedule } from './shop-job.ts';
import { visitsOf } from './visits-of.ts';

/**
 * Which schedule, ready no later than a minute, needs the fewest visits to the shop, searched to the end?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @param start a schedule to beat, ready by `readyMinute`
 * @param readyMinute no later than this
 * @param nodes most parts of the trees to look at, all together
 * @returns the schedule with the fewest visits found, and whether there is proof that fewer will not do
 *
 * Source: branch and bound over windows: one that the last schedule used is either closed or counted. Closing more
 * windows never makes more schedules, so a part without a schedule is done. Valid range: any job. Departures: none.
 */
export function fewestVisits(
  job: ShopJob,
  start: ShopSchedule,
  readyMinute: number,
  nodes: number,
): { readonly schedule: ShopSchedule; readonly proven: boolean } {
  let best = start;
  let fewest = visitsOf(job, start.start).size;
  let left = nodes;
  let proven = true;
  visit(new Set(), new Set(), start);
  return { schedule: best, proven };

  function visit(
    closed: ReadonlySet<number>,
    counted: ReadonlySet<number>,
    known: ShopSchedule | null,
  ): void {
    if (Math.max(1, counted.size) >= fewest) return;
    let schedule = known;
    if (schedule === null) {
      const answer = exactShop(job, {
        readyBefore: readyMinute + 2 * MINUTE_DUST,
        nodes: left,
        closed,
        anyWillDo: true,
      });
      left -= answer.nodes;
      schedule = answer.schedule;
      if (!answer.complete) proven = false;
      if (schedule === null) return;
    }
    const used = visitsOf(job, schedule.start);
    if (used.size < fewest) {
      fewest = used.size;
      best = schedule;
    }
    const window = [...used].findLast((one) => !counted.has(one));
    if (window === undefined) return;
    if (left <= 0) {
      proven = false;
      return;
    }
    visit(new Set([...closed, window]), counted, null);
    visit(closed, new Set([...counted, window]), schedule);
  }
}
