import { repeatableRandom } from '../../cutting/sheet-2d/repeatable-random.ts';
import { MINUTE_DUST } from '../constants.ts';
import { type SerialChoices, serialShop } from './serial-shop.ts';
import type { ShopBound } from './shop-bound.ts';
import { ShopFloor } from './shop-floor.ts';
import type { ShopJob, ShopSchedule } from './shop-job.ts';
import { chainReady, jobReady } from './shop-moments.ts';
import { startingOrders } from './starting-orders.ts';
import { visitsOf } from './visits-of.ts';

/** How many steps back the cost is that a changed order may not exceed (late acceptance). Measured with the bench. */
const HISTORY = 5;
/** Trails followed from different starting orders; the worse half is given up, again and again. Measured likewise. */
const TRAILS = 6;
/** On every other trail, how often an order taken up is written down anew as the starts it led to. Measured likewise. */
const REWRITES = 1 / 5;
/** Least reach of a move where keys are minutes: a working day. */
const LEAST_SPAN_MIN = 600;
/** Weight of the mean ready time beside the last, so that progress on chains that are not the last shows. */
const MEAN_WEIGHT = 1 / 50;
/** Weight of the mean time by which chains are ready after the bound. Measured likewise. */
const LATE_WEIGHT = 1 / 5;

/** One order being improved. */
interface Trail {
  choices: SerialChoices;
  cost: number;
  /** The chain that is ready last. */
  lateChain: number;
  readonly rewrites: boolean;
  readonly history: number[];
}

export interface SearchAnswer {
  readonly schedule: ShopSchedule | null;
  readonly readyMinute: number;
  readonly visits: number;
  readonly built: number;
}

/**
 * Which of many schedules built one after the other is ready earliest, with the fewest visits to the shop?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @param bound from shopBound; reached, the search turns to fewer visits at once
 * @param options.seed, options.iterations how many schedules are built; the same seed gives the same answer
 * @returns the best found; null only if none could be built
 *
 * Source: serial generation under late acceptance (E. Burke, Y. Bykov, European Journal of Operational Research 258,
 * 2017), moving forward what is late (D. Joslin, D. Clements, JAIR 10, 1999), from several starting orders of which the
 * worse half is given up again and again (K. Jamieson, A. Talwalkar, AISTATS 2016); then windows are closed one by one
 * as long as the job is ready as early. Valid range: any job. Departures: none.
 */
export function searchShop(
  job: ShopJob,
  bound: ShopBound,
  { seed, iterations }: { readonly seed: number; readonly iterations: number },
): SearchAnswer {
  const random = repeatableRandom(seed);
  const floor = new ShopFloor(job);
  const count = job.tasks.length;
  const closing = job.tasks.flatMap(({ intervals }, index) =>
    intervals.length > 1 && intervals.some(({ closes }) => closes !== null) ? [index] : [],
  );
  let best: ShopSchedule | null = null;
  let bestReady = Number.POSITIVE_INFINITY;
  let bestVisits = Number.POSITIVE_INFINITY;
  let bestChoices: SerialChoices | null = null;
  let built = 0;
  let builtLate = 0;

  const starts: Trail[] = [];
  for (const { keys, byTime } of startingOrders(job, bound)) {
    if (starts.length > 0 && built >= iterations) break;
    const choices = { keys, wanted: new Int32Array(count).fill(-1), byTime };
    const cost = build(choices);
    starts.push({ choices, cost, lateChain: builtLate, rewrites: false, history: [] });
  }
  followTrails(starts);
  fewerVisits();
  return { schedule: best, readyMinute: bestReady, visits: bestVisits, built };

  function build(choices: SerialChoices): number {
    built++;
    if (!serialShop(floor, choices)) return Number.POSITIVE_INFINITY;
    const ready = jobReady(job, floor.start, floor.interval);
    const visits = visitsOf(job, floor.start).size;
    if (ready < bestReady - MINUTE_DUST || (ready <= bestReady + MINUTE_DUST && visits < bestVisits)) {
      best = { start: Array.from(floor.start), interval: Array.from(floor.interval) };
      bestReady = Math.min(ready, bestReady);
      bestVisits = visits;
      bestChoices = choices;
    }
    let sum = 0;
    let latest = Number.NEGATIVE_INFINITY;
    for (let chain = 0; chain < job.chains.length; chain++) {
      const chainEnd = chainReady(job, chain, floor.start, floor.interval);
      sum += MEAN_WEIGHT * chainEnd + LATE_WEIGHT * Math.max(0, chainEnd - bound.readyMinute);
      if (chainEnd <= latest) continue;
      latest = chainEnd;
      builtLate = chain;
    }
    return ready + sum / Math.max(1, job.chains.length);
  }

  /** From the best starts, for three quarters of the budget or until the bound is reached. */
  function followTrails(starts: readonly Trail[]): void {
    const first = built;
    let trails = starts
      .toSorted((left, right) => left.cost - right.cost)
      .slice(0, TRAILS)
      .map((trail, at) => ({
        ...trail,
        rewrites: at % 2 === 1,
        history: new Array<number>(HISTORY).fill(trail.cost),
      }));
    const rounds = 1 + Math.ceil(Math.log2(Math.max(1, trails.length)));
    const turns = Math.ceil(iterations * (3 / 4)) - first;
    for (let round = 0; round < rounds; round++) {
      for (const trail of trails) follow(trail, Math.floor(turns / rounds / trails.length));
      trails = trails
        .toSorted((left, right) => left.cost - right.cost)
        .slice(0, Math.ceil(trails.length / 2));
    }
  }

  function follow(trail: Trail, turns: number): void {
    for (let turn = 0; turn < turns; turn++) {
      if (bestReady <= bound.readyMinute + MINUTE_DUST || count < 2) return;
      const choices = changed(trail.choices, trail.lateChain);
      const cost = build(choices);
      const slot = built % HISTORY;
      if (cost <= trail.cost || cost <= (trail.history[slot] as number)) {
        const rewritten = trail.rewrites && random() < REWRITES;
        trail.choices = rewritten
          ? { keys: floor.start.slice(), wanted: choices.wanted, byTime: false }
          : choices;
        trail.cost = cost;
        trail.lateChain = builtLate;
      }
      trail.history[slot] = trail.cost;
    }
  }

  /** Another order: a task, a chain, or the tail of a chain moves; now and then a coat wants another interval. */
  function changed({ keys, wanted, byTime }: SerialChoices, lateChain: number): SerialChoices {
    const next = { keys: keys.slice(), wanted: wanted.slice(), byTime };
    // Every other time, a task of the chain that is ready last.
    const late = job.chains[lateChain];
    const pick = (): number =>
      late !== undefined && random() < 1 / 2
        ? late.first + Math.floor(random() * (late.last - late.first + 1))
        : Math.floor(random() * count);
    const span = Math.max(Math.max(...keys) - Math.min(...keys), byTime ? LEAST_SPAN_MIN : 1);
    const way = random();
    if (closing.length > 0 && way < 1 / 4) {
      const at = closing[Math.floor(random() * closing.length)] as number;
      const intervals = job.tasks[at]?.intervals.length ?? 1;
      next.wanted[at] = Math.floor(random() * (intervals + 1)) - 1;
      if (random() < 1 / 2) return next;
    }
    if (way < 2 / 5) {
      const left = pick();
      const right = pick();
      next.keys[left] = keys[right] as number;
      next.keys[right] = keys[left] as number;
    } else if (way < 3 / 5) {
      next.keys[pick()] = (keys[pick()] as number) + (random() - 1 / 2) * (byTime ? span / 4 : span / count);
    } else if (way < 4 / 5) {
      const at = pick();
      const { last } = job.chains[job.tasks[at]?.chain ?? 0] ?? { last: at };
      const shift = (random() - 1 / 2) * span;
      for (let index = at; index <= last; index++) next.keys[index] = (keys[index] as number) + shift;
    } else {
      // The same step of several batches together, so that sanding is not spread over the day.
      const at = pick();
      const step = at - (job.chains[job.tasks[at]?.chain ?? 0]?.first ?? 0);
      const share = random();
      for (const { first, last } of job.chains)
        if (first + step <= last && random() < share)
          next.keys[first + step] =
            (keys[at] as number) + (random() - 1 / 2) * (byTime ? span / 4 : span / count);
    }
    return next;
  }

  /** Closes windows, the least used first, as long as the job is ready as early without them. */
  function fewerVisits(): void {
    let closed = new Set<number>();
    let improved = true;
    while (improved && best !== null && built < iterations) {
      improved = false;
      const used = [...visitsOf(job, best.start)].toReversed();
      for (const window of used) {
        if (built >= iterations) break;
        const before = bestVisits;
        floor.closed = new Set([...closed, window]);
        build(bestChoices as SerialChoices);
        for (let tries = 0; tries < 3 && bestVisits === before && built < iterations; tries++)
          build(changed(bestChoices as SerialChoices, builtLate));
        if (bestVisits === before) continue;
        closed = floor.closed as Set<number>;
        improved = true;
        break;
      }
    }
    floor.closed = null;
  }
}
