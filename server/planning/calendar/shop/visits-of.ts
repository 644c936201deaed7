import type { ShopJob } from './shop-job.ts';

/**
 * Which working windows does a schedule use? One window used is one visit to the shop.
 *
 * @param job see shop-job.ts
 * @param start of every task, minutes since midnight of day 0
 * @returns indices of windows; visits that are history do not count
 *
 * Source: definition. Valid range: a schedule of the job. Departures: none.
 */
export function visitsOf({ tasks, windows }: ShopJob, start: ArrayLike<number>): Set<number> {
  const used = new Set<number>();
  for (const [index, { doneFrom }] of tasks.entries()) {
    if (doneFrom !== null) continue;
    const minute = start[index] as number;
    let low = 0;
    let high = windows.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((windows[middle]?.fromMinute ?? 0) <= minute) low = middle;
      else high = middle - 1;
    }
    used.add(low);
  }
  return used;
}
