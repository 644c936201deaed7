import type { ShopJob } from './shop-job.ts';

/** Rack areas are added up in whole units of this, m2, rounded so that the bound stays a bound. */
const AREA_UNIT_M2 = 0.001;

/**
 * When, at the earliest, can the rack have taken every coat?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @returns a minute before which not every coat can be dry; 0 where the rack never runs out
 *
 * Source: the energy argument: every coat keeps its batch's area for at least its shortest drying in the shop's best
 * air, and at no time can more area be taken than the largest sum of whole batches that fits. Valid range: any job.
 * Departures: none. Example: six coats of 24 h, one batch at a time: not before 144 h after the first.
 */
export function rackBound(job: ShopJob): number {
  const { rackM2, chains, tasks, startMinute } = job;
  if (rackM2 === Number.POSITIVE_INFINITY) return 0;
  const units = chains.map(({ footprintM2 }) => Math.floor(footprintM2 / AREA_UNIT_M2));
  const most = largestSum(units, Math.ceil(rackM2 / AREA_UNIT_M2));
  let work = 0;
  let first = Number.POSITIVE_INFINITY;
  for (const { chain, leastRackMin, isCoat, doneFrom, ranges, times } of tasks) {
    if (!isCoat || doneFrom !== null) continue;
    work += (units[chain] as number) * leastRackMin;
    first = Math.min(first, Math.max(startMinute, ranges[0]?.first ?? startMinute) + times.layFromMin);
  }
  return most === 0 || work === 0 ? 0 : first + work / most;
}

function largestSum(units: readonly number[], most: number): number {
  const total = units.reduce((sum, unit) => sum + unit, 0);
  if (total <= most) return total;
  const reached = new Uint8Array(most + 1);
  reached[0] = 1;
  for (const unit of units)
    for (let sum = most; sum >= unit; sum--) if (reached[sum - unit] === 1) reached[sum] = 1;
  return reached.lastIndexOf(1);
}
