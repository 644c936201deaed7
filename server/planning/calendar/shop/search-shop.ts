import { repeatableRandom } from '../../cutting/sheet-2d/repeatable-random.ts';
import { MINUTE_DUST } from '../constants.ts';
import { type SerialChoices, serialShop } from './serial-shop.ts';
import type { ShopBound } from './shop-bound.ts';
import { ShopFloor } from './shop-floor.ts';
import type { ShopJob, ShopSchedule } from './shop-job.ts';
import { chainReady, jobReady } from './shop-moments.ts';
import { visitsOf } from './visits-of.ts';

/** How many steps back the cost is that a changed order may not exceed (late acceptance). */
const HISTORY = 30;
/** How far chains start one behind the other in starting orders, as shares of one chain's hands-on time. */
const STAGGERS = [1 / 4, 1 / 2, 1, 2, 4];
/** Least reach of a move where keys are minutes: a working day. */
const LEAST_SPAN_MIN = 600;
/** Weight of the mean ready time beside the last, so that progress on chains that are not the last shows. */
const MEAN_WEIGHT = 1 / 50;

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
 * 2017), moving forward what is late (D. Joslin, D. Clements, JAIR 10, 1999); then windows are closed one by one as long
 * as the job is ready as early. Valid range: any job. Departures: none.
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
  let lateChain = 0;
  const builtLate = 0;

  // Starting orders: longest way to go first, step by step, batch by batch, as each chain would alone.
  let current: SerialChoices | null = null;
  let currentCost = Number.POSITIVE_INFINITY;
  for (const { keyOf, byTime } of startingKeys()) {
    const choices = {
      keys: Float64Array.from({ length: count }, (_, index) => keyOf(index)),
      wanted: noWishes(),
      byTime,
    };
    if (current !== null && built >= iterations) break;
    const cost = build(choices);
    if (cost < currentCost || current === null) {
      current = choices;
      currentCost = cost;
    }
  }
  const readyTurns = Math.ceil(iterations * (3 / 4));
  const history = new Array<number>(HISTORY).fill(currentCost);
  while (built < readyTurns && bestReady > bound.readyMinute + MINUTE_DUST && count > 1) {
    const choices = changed(current as SerialChoices);
    const cost = build(choices);
    const slot = built % HISTORY;
    if (cost <= currentCost || cost <= (history[slot] as number)) {
      current = choices;
      currentCost = cost;
      lateChain = builtLate;
    }
    history[slot] = currentCost;
  }
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
    for (let chain = 0; chain < job.chains.length; chain++)
      sum += chainReady(job, chain, floor.start, floor.interval);
    return ready + (MEAN_WEIGHT * sum) / Math.max(1, job.chains.length);
  }

  function startingKeys(): { readonly keyOf: (index: number) => number; readonly byTime: boolean }[] {
    const { aloneStart, aloneReady } = bound;
    const work =
      job.tasks.reduce((sum, { times }) => sum + times.handsOnMin, 0) / Math.max(1, job.chains.length);
    const bySize = job.chains
      .map((chain, index) => ({ index, size: job.tasks[chain.last]?.times.handsOnMin ?? 0 }))
      .sort((left, right) => right.size - left.size)
      .map(({ index }) => index);
    const rank = job.chains.map((_, chain) => bySize.indexOf(chain));
    // Chains one behind the other, by more or less of what one keeps the hands, largest first or last.
    const staggered = STAGGERS.flatMap((share) => [
      (index: number) => (aloneStart[index] as number) + share * work * (rank[chainOf(index)] as number),
      (index: number) => (aloneStart[index] as number) - share * work * (rank[chainOf(index)] as number),
    ]);
    const chainOf = (index: number): number => job.tasks[index]?.chain ?? 0;
    const position = (index: number): number => index - (job.chains[chainOf(index)]?.first ?? 0);
    const timed = [0, 1 / 2, 1, -1 / 2].map(
      (share) => (index: number) => share * work * (rank[chainOf(index)] as number),
    );
    const fixed: ((index: number) => number)[] = [
      (index) => (aloneStart[index] as number) - (aloneReady[chainOf(index)] as number),
      (index) => position(index) * job.chains.length + chainOf(index),
      (index) => index,
      (index) => aloneStart[index] as number,
      (index) => -position(index) * job.chains.length + chainOf(index),
      ...staggered,
    ];
    return [
      ...fixed.map((keyOf) => ({ keyOf, byTime: false })),
      ...timed.map((keyOf) => ({ keyOf, byTime: true })),
    ];
  }

  function noWishes(): Int32Array {
    return new Int32Array(count).fill(-1);
  }

  /** Another order: a task, a chain, or the tail of a chain moves; now and then a coat wants another interval. */
  function changed({ keys, wanted, byTime }: SerialChoices): SerialChoices {
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
          build(changed(bestChoices as SerialChoices));
        if (bestVisits === before) continue;
        closed = floor.closed as Set<number>;
        improved = true;
        break;
      }
    }
    floor.closed = null;
  }
}
