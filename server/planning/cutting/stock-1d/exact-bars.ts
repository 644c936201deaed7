import type { BarJob, BarPattern, BarPiece, BarStock } from './bar-job.ts';
import { type CheapestFirst, cheapestFirst } from './cheapest-first.ts';

/** Rests kept in memory before the search is given up, some 100 MB. Ours. */
const MOST_RESTS = 150_000;
/** Work between two looks at the clock, in steps of filling a bar, about a tenth of a millisecond. Ours, measured. */
const WORK_AT_ONCE = 1000;
/** A rest kept is as much work as so many steps. */
const WORK_OF_REST = 30;
/** With more steps for one bar than this, some 20 ms, there are too many ways. Ours, measured. */
const MOST_WORK_AT_ONCE = 200_000;
/** Slack for sums of fractions, in steps of the cost. */
const SLACK = 1e-4;

/** Prices at which no way to fill a stock is worth more than the stock costs: from the linear programme. */
export interface BarPrices {
  /** Per piece index, 0 or more. */
  readonly pieces: readonly number[];
  /** Per stock: worth of one more of a limited stock, 0 or less. */
  readonly stocks: readonly number[];
}

export interface ExactBars {
  readonly job: BarJob;
  /** Piece indices, longest first. */
  readonly order: readonly number[];
  readonly prices: BarPrices;
  /** All costs are multiples of this; above 0. */
  readonly costStep: number;
  /** What the best plan known costs. */
  readonly bestCost: () => number;
  readonly found: (patterns: readonly BarPattern[]) => void;
  /** No plan costs less than this. */
  readonly bounded: (cost: number) => void;
}

/** What is left to cut after some bars, and the bar that led here. */
interface Rest {
  readonly counts: readonly number[];
  readonly limits: readonly number[];
  readonly spent: number;
  readonly parent: Rest | null;
  readonly stock: number;
  readonly cuts: BarPattern['cuts'];
}

/**
 * The cheapest bars of all, where there are not too many ways to cut them.
 *
 * Bar after bar, each with at least one of the longest piece left and full to the end; from what is left it goes on where
 * the money spent and the prices of the rest come to least. Those prices come from the linear programme, so their sum
 * is never above what the rest costs: the first plan to be finished is the cheapest, and the sum is a bound meanwhile.
 * Source: P. E. Hart, N. J. Nilsson and B. Raphael, "A formal basis for the heuristic determination of minimum cost
 * paths", IEEE Transactions on Systems Science and Cybernetics 4 (1968).
 * Result: a generator that yields about ten times a millisecond; true when the bound has met the best plan, false when
 * there were too many ways.
 */
export function* exactBars(search: ExactBars): Generator<void, boolean, void> {
  const { job, order, prices, costStep, bestCost, found, bounded } = search;
  const lengths = order.map((piece) => (job.pieces[piece] as BarPiece).length);
  const worths = order.map((piece) => prices.pieces[piece] as number);
  const seen = new Map<string, number>();
  const open: CheapestFirst<Rest> = cheapestFirst();
  let work = 0;
  const toStep = (cost: number): number => Math.ceil(cost / costStep - SLACK) * costStep;

  push({
    counts: order.map((piece) => (job.pieces[piece] as BarPiece).count),
    limits: job.stocks.map(({ limit }) => limit),
    spent: 0,
    parent: null,
    stock: 0,
    cuts: [],
  });
  for (;;) {
    const next = open.take();
    bounded(next === null ? bestCost() : Math.min(bestCost(), next.cost));
    if (next === null || next.cost >= bestCost()) return true;
    const { item: rest } = next;
    if ((seen.get(keyOf(rest)) as number) < leastOf(rest)) continue;
    for (const [stock, offer] of job.stocks.entries()) if (rest.limits[stock] !== 0) fill(rest, stock, offer);
    if (seen.size > MOST_RESTS || work > MOST_WORK_AT_ONCE) return false;
    if (work < WORK_AT_ONCE) continue;
    work = 0;
    yield;
  }

  /** Every full bar of one stock that takes the longest piece left, and may still lead to a cheaper plan. */
  function fill(rest: Rest, stock: number, { length: whole, cost }: BarStock): void {
    const { counts } = rest;
    const first = counts.findIndex((count) => count > 0);
    const after = leastOf(rest) + cost - (prices.stocks[stock] as number);
    const rates = bestRates(counts);
    const taken = counts.map(() => 0);
    const go = (at: number, room: number, worth: number): void => {
      if (work++ > MOST_WORK_AT_ONCE) return;
      if (toStep(after - worth - room * (rates[at] ?? 0)) >= bestCost()) return;
      const length = lengths[at];
      if (length === undefined) {
        if (isFull(room)) take();
        return;
      }
      const most = Math.min(counts[at] as number, Math.floor(room / length));
      for (let count = most; count >= (at === first ? 1 : 0); count--) {
        taken[at] = count;
        go(at + 1, room - count * length, worth + count * (worths[at] as number));
      }
      taken[at] = 0;
    };
    const isFull = (room: number): boolean => {
      for (let at = lengths.length - 1; at >= 0 && (lengths[at] as number) <= room; at--)
        if ((counts[at] as number) > (taken[at] as number)) return false;
      return true;
    };
    const take = (): void =>
      push({
        counts: counts.map((count, at) => count - (taken[at] as number)),
        limits: rest.limits.map((limit, each) => (each === stock ? limit - 1 : limit)),
        spent: rest.spent + cost,
        parent: rest,
        stock,
        cuts: taken.flatMap((count, at) => (count > 0 ? [{ piece: order[at] as number, count }] : [])),
      });
    go(first, whole, 0);
  }

  function push(rest: Rest): void {
    if (rest.counts.every((count) => count === 0)) {
      if (rest.spent < bestCost()) found(patternsOf(rest));
      return;
    }
    const least = leastOf(rest);
    const cost = toStep(least);
    if (cost >= bestCost()) return;
    const key = keyOf(rest);
    const known = seen.get(key);
    if (known !== undefined && known <= least) return;
    seen.set(key, least);
    work += WORK_OF_REST;
    open.put(rest, cost, lengthLeft(rest));
  }

  function leastOf({ spent, counts, limits }: Rest): number {
    let least = spent;
    for (let at = 0; at < counts.length; at++) least += (counts[at] as number) * (worths[at] as number);
    for (const [stock, price] of prices.stocks.entries())
      if (price < 0) least += price * (limits[stock] as number);
    return least;
  }

  function lengthLeft({ counts }: Rest): number {
    return counts.reduce((sum, count, at) => sum + count * (lengths[at] as number), 0);
  }

  /** From each row on, the most that a unit of length can be worth. */
  function bestRates(counts: readonly number[]): number[] {
    const rates: number[] = [];
    for (let at = counts.length - 1, best = 0; at >= 0; at--) {
      if ((counts[at] as number) > 0) best = Math.max(best, (worths[at] as number) / (lengths[at] as number));
      rates[at] = best;
    }
    return rates;
  }
}

/** The limits are named only where there are some. */
function keyOf({ counts, limits }: Rest): string {
  return `${counts.join()};${limits.filter(Number.isFinite).join()}`;
}

function patternsOf(end: Rest): BarPattern[] {
  const patterns: BarPattern[] = [];
  for (let at: Rest = end; at.parent !== null; at = at.parent)
    patterns.push({ stock: at.stock, cuts: at.cuts, times: 1 });
  return patterns;
}
