import { chainJob } from './chain-job.ts';
import { exactShop } from './exact-shop.ts';
import { rackBound } from './rack-bound.ts';
import { rackTurnsBound } from './rack-turns-bound.ts';
import { settleShop } from './settle-shop.ts';
import type { ShopChain, ShopJob, ShopTask } from './shop-job.ts';
import { chainReady } from './shop-moments.ts';

/** Parts of the tree looked at for one chain alone: a chain conflicts with itself only over recoat intervals. */
const NODES_PER_CHAIN = 500;

/** Most earliest starts from which sets of visits are looked at. */
const MOST_HEADS = 10;

export interface ShopBound {
  /** No schedule is ready before this minute; Infinity when some chain does not fit even alone. */
  readonly readyMinute: number;
  /** Which argument gives it: the slowest chain alone, all hands-on work filled into the working hours, or the rack. */
  readonly because: 'chain' | 'hands' | 'rack';
  /** The chain that takes longest alone, or does not fit. */
  readonly chain: number;
  /** Start of every task in its chain's best schedule alone; 0 where that was not found. */
  readonly aloneStart: readonly number[];
  readonly aloneReady: readonly number[];
}

/**
 * When, at the earliest, can the job be ready?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @returns a minute that no schedule can beat, and why
 *
 * Source: each chain alone, exactly; and the energy argument in calendar time: the hands-on minutes of a set of visits
 * fill the working windows from their earliest start on, a window taking no more than the largest sum of whole visits
 * that fits in it, and after the last of them the rest of some chain is still to come. Valid range: any job. Departures: none.
 * Example: 25 visits of 60 minutes in days of 10 hours: not before the middle of day 2.
 */
export function shopBound(job: ShopJob): ShopBound {
  const aloneStart: number[] = [];
  const aloneReady: number[] = [];
  let slowest = 0;
  for (const [chain, { twin }] of job.chains.entries()) {
    if (twin >= 0) {
      const { first, last } = job.chains[twin] as ShopChain;
      aloneStart.push(...aloneStart.slice(first, last + 1));
      aloneReady.push(aloneReady[twin] as number);
      continue;
    }
    const alone = chainJob(job, chain);
    const limit = Number.POSITIVE_INFINITY;
    const { schedule, readyMinute, complete } = exactShop(alone, {
      readyBefore: limit,
      nodes: NODES_PER_CHAIN,
      closed: null,
      anyWillDo: false,
    });
    aloneStart.push(...(schedule?.start ?? alone.tasks.map(() => 0)));
    aloneReady.push(complete ? readyMinute : job.startMinute);
    if ((aloneReady[chain] as number) > (aloneReady[slowest] as number)) slowest = chain;
  }
  const byChain = aloneReady[slowest] ?? job.startMinute;
  const heads = byChain === Number.POSITIVE_INFINITY ? null : earliestStarts(job);
  const byHands = heads === null ? 0 : handsBound(job, heads);
  const byRack = heads === null ? 0 : Math.max(rackBound(job), rackTurnsBound(job, heads));
  const readyMinute = Math.max(byChain, byHands, byRack);
  const because = readyMinute === byChain ? 'chain' : readyMinute === byHands ? 'hands' : 'rack';
  return { readyMinute, because, chain: slowest, aloneStart, aloneReady };
}

/**
 * The energy argument for many sets of visits: those with at least so many more to come in their chain, and that cannot
 * start before some minute. The last of a set to end still has the rest of its chain before it.
 */
function handsBound(job: ShopJob, heads: Float64Array): number {
  if (heads.includes(Number.POSITIVE_INFINITY)) return Number.POSITIVE_INFINITY;
  const open = job.tasks.flatMap(({ doneFrom }, index) => (doneFrom === null ? [index] : []));
  const minutes = sampled([...new Set(open.map((index) => heads[index] as number))]);
  const alone = job.chains.map((_, chain) => chainJob(job, chain));
  const longest = Math.max(0, ...job.chains.map(({ first, last }) => last - first));
  let bound = 0;
  for (let more = 0; more <= longest; more++)
    for (const from of minutes) {
      const set = open.filter((index) => {
        const { last } = job.chains[(job.tasks[index] as ShopTask).chain] as ShopChain;
        return index + more <= last && (heads[index] as number) >= from;
      });
      if (set.length === 0) continue;
      const end = energyEnd(
        job,
        set.map((index) => (job.tasks[index] as ShopTask).times.handsOnMin),
        from,
      );
      if (end === Number.POSITIVE_INFINITY) return end;
      const chains = new Set(set.map((index) => (job.tasks[index] as ShopTask).chain));
      let least = Number.POSITIVE_INFINITY;
      for (const chain of chains) {
        if (least <= bound) break;
        least = Math.min(least, readyAfter(alone[chain] as ShopJob, more, end));
      }
      bound = Math.max(bound, least);
    }
  return bound;
}

/** No task starts before these, by its own chain; Infinity where a chain does not fit. */
function earliestStarts(job: ShopJob): Float64Array {
  const start = Float64Array.from(job.tasks, (task) => task.doneFrom ?? 0);
  const interval = Int32Array.from(job.tasks, openInterval);
  const fits = settleShop(job, { start, interval, orders: [] }, Number.POSITIVE_INFINITY, null);
  return fits ? start : start.fill(Number.POSITIVE_INFINITY);
}

/** The whole, or some of it evenly spread, the least included. */
function sampled(minutes: readonly number[]): number[] {
  const sorted = minutes.toSorted((left, right) => left - right);
  if (sorted.length <= MOST_HEADS) return sorted;
  return Array.from(
    { length: MOST_HEADS },
    (_, at) => sorted[Math.floor((at * sorted.length) / MOST_HEADS)] as number,
  );
}

const openInterval = (task: ShopTask): number =>
  task.intervals.length === 1 && task.doneFrom === null ? 0 : -1;

/** When is a chain ready at the earliest, if the visit with so many more to come ends no sooner than a minute? */
function readyAfter(alone: ShopJob, more: number, end: number): number {
  const index = alone.tasks.length - 1 - more;
  const { times, scuffedTimes, intervals } = alone.tasks[index] as ShopTask;
  const readyIn = (choice: number, handsOnMin: number): number => {
    const start = Float64Array.from(alone.tasks, (task) => task.doneFrom ?? 0);
    const interval = Int32Array.from(alone.tasks, openInterval);
    start[index] = end - handsOnMin;
    if (choice >= 0) interval[index] = choice;
    const fits = settleShop(alone, { start, interval, orders: [] }, Number.POSITIVE_INFINITY, null);
    return fits ? chainReady(alone, 0, start, interval) : Number.POSITIVE_INFINITY;
  };
  // Without scuffing first, whatever the interval; and in each interval that asks for it.
  let least =
    intervals.length === 1 && intervals[0]?.scuffed
      ? Number.POSITIVE_INFINITY
      : readyIn(-1, times.handsOnMin);
  for (const [choice, { scuffed }] of intervals.entries())
    if (scuffed) least = Math.min(least, readyIn(choice, scuffedTimes.handsOnMin));
  return least;
}

/** Earliest minute by which so many visits can all be over, none begun before `notBefore`. */
function energyEnd(job: ShopJob, visits: readonly number[], notBefore: number): number {
  const { stepMin, windows, hands } = job;
  const onSteps = job.tasks.every(({ ranges }) => ranges.every(({ first }) => first % stepMin === 0));
  let left = visits.reduce((sum, minutes) => sum + minutes, 0);
  if (left === 0) return job.startMinute;
  const longest = windows.reduce((most, span) => Math.max(most, span.toMinute - span.fromMinute), 0);
  const sums = onSteps ? subsetSums(visits, stepMin, Math.floor(longest / stepMin)) : null;
  for (const { fromMinute, toMinute } of windows) {
    const opens = Math.max(fromMinute, notBefore);
    const from = onSteps ? Math.ceil(opens / stepMin) * stepMin : opens;
    const to = onSteps ? Math.floor(toMinute / stepMin) * stepMin : toMinute;
    if (from >= to) continue;
    const usable = sums === null ? to - from : largestSum(sums, (to - from) / stepMin) * stepMin;
    if (left <= usable * hands) return from + Math.ceil(left / hands);
    left -= usable * hands;
  }
  return Number.POSITIVE_INFINITY;
}

function subsetSums(visits: readonly number[], stepMin: number, most: number): Uint8Array {
  const reached = new Uint8Array(most + 1);
  reached[0] = 1;
  for (const minutes of visits) {
    const steps = minutes / stepMin;
    for (let sum = most; sum >= steps; sum--) if (reached[sum - steps] === 1) reached[sum] = 1;
  }
  return reached;
}

function largestSum(sums: Uint8Array, steps: number): number {
  let at = Math.floor(steps);
  while (at > 0 && sums[at] !== 1) at--;
  return at;
}
