import { chainJob } from './chain-job.ts';
import { exactShop } from './exact-shop.ts';
import { rackBound } from './rack-bound.ts';
import type { ShopChain, ShopJob, ShopTask } from './shop-job.ts';

/** Parts of the tree looked at for one chain alone: a chain conflicts with itself only over recoat intervals. */
const NODES_PER_CHAIN = 500;

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
 * Source: each chain alone, exactly; and the energy argument in calendar time: the hands-on minutes of a set of chains
 * fill the working windows from the start on, a window taking no more than the largest sum of whole visits that fits in
 * it, and after the last visit the quickest coat of the set still has to dry. Valid range: any job. Departures: none.
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
  const byHands = byChain === Number.POSITIVE_INFINITY ? 0 : handsBound(job);
  const byRack = rackBound(job);
  const readyMinute = Math.max(byChain, byHands, byRack);
  const because = readyMinute === byChain ? 'chain' : readyMinute === byHands ? 'hands' : 'rack';
  return { readyMinute, because, chain: slowest, aloneStart, aloneReady };
}

/** The energy argument, for all chains and for ever smaller sets of those that dry longest after their last visit. */
function handsBound(job: ShopJob): number {
  const all = job.chains.map((chain) => chain).filter((chain) => workOf(job, [chain]).length > 0);
  const reference = energyEnd(job, workOf(job, all));
  const sorted = all.sort(
    (left, right) => readyAfter(job, right, reference) - readyAfter(job, left, reference),
  );
  let bound = 0;
  for (let size = 1; size <= sorted.length; size++) {
    const set = sorted.slice(0, size);
    const end = energyEnd(job, workOf(job, set));
    bound = Math.max(bound, Math.min(...set.map((chain) => readyAfter(job, chain, end))));
  }
  return bound;
}

/** Hands-on minutes of the visits still to come, each at its shortest. */
function workOf(job: ShopJob, chains: readonly ShopChain[]): number[] {
  return chains.flatMap(({ first, last }) =>
    job.tasks
      .slice(first, last + 1)
      .filter(({ doneFrom }) => doneFrom === null)
      .map(({ times }) => times.handsOnMin),
  );
}

/** When is a chain ready if its last visit ends no sooner than a minute? */
function readyAfter(job: ShopJob, { last, lastCoat, readyClock }: ShopChain, end: number): number {
  if (readyClock === null || lastCoat !== last) return end;
  const { times, scuffedTimes } = job.tasks[last] as ShopTask;
  const cleanUp = Math.max(
    times.handsOnMin - times.layToMin,
    scuffedTimes.handsOnMin - scuffedTimes.layToMin,
  );
  return Math.max(end, readyClock(Math.max(0, end - cleanUp)));
}

/** Earliest minute by which so many visits can all be over. */
function energyEnd(job: ShopJob, visits: readonly number[]): number {
  const { stepMin, windows, hands } = job;
  const onSteps = job.tasks.every(({ ranges }) => ranges.every(({ first }) => first % stepMin === 0));
  let left = visits.reduce((sum, minutes) => sum + minutes, 0);
  if (left === 0) return job.startMinute;
  const longest = windows.reduce((most, span) => Math.max(most, span.toMinute - span.fromMinute), 0);
  const sums = onSteps ? subsetSums(visits, stepMin, Math.floor(longest / stepMin)) : null;
  for (const { fromMinute, toMinute } of windows) {
    const from = onSteps ? Math.ceil(fromMinute / stepMin) * stepMin : fromMinute;
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
