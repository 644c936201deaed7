import { FIT_TOLERANCE_MM, GRID_PER_MM } from '../constants.ts';
import { barBound } from './bar-bound.ts';
import type { BarJob, BarPattern } from './bar-job.ts';
import { BarSearch } from './bar-search.ts';

/** Steps of the search per edit, shared by the number of different lengths: about 10 ms. Ours, measured. */
const EDIT_STEPS = 2000;
/** With more different lengths an edit's plan is the first plan with the simple bound. */
const MOST_LENGTHS_SEARCHED = 120;

export interface BarsToCut {
  /** Different pieces; lengths mm. */
  readonly pieces: readonly { readonly lengthMm: number; readonly count: number }[];
  /** `limit` is Infinity for stock to buy. `cost`: 0 or more, in any one unit, whole numbers for the best bound. */
  readonly stocks: readonly { readonly lengthMm: number; readonly cost: number; readonly limit: number }[];
  /** Lost between neighbouring pieces, mm; 0 for banding cut with shears. */
  readonly kerfMm: number;
  /** 1 is what an edit can wait for; more searches longer. */
  readonly effort?: number;
}

export interface BarsPlan {
  /** Which stock, which pieces of it (indices as given), how often. */
  readonly patterns: readonly BarPattern[];
  readonly cost: number;
  /** No plan costs less. */
  readonly boundCost: number;
  /** No plan buys fewer bars of stock without limit. */
  readonly boundStocks: number;
  /** True only when the cost equals its bound. */
  readonly proven: boolean;
}

/**
 * How to cut boards, bars or rolls at least cost.
 *
 * `toCut`: see BarsToCut. Result: patterns with their counts, the cost, and bounds no plan can beat. Stock of no cost, such
 * as leftovers, is used as far as that saves money. Same input, same plan.
 * Source: see bar-search.ts.
 * Valid range: lengths above 0, counts whole and above 0, every piece at most as long as some stock without limit; else
 * RangeError. Example: pieces 4 x 597.75 mm, stock 2400 mm, kerf 3 mm: one pattern, used once, proven.
 */
export function cutBars(toCut: BarsToCut): BarsPlan {
  const { pieces, stocks, kerfMm, effort = 1 } = toCut;
  requireUsable(toCut);
  if (pieces.length === 0) return { patterns: [], cost: 0, boundCost: 0, boundStocks: 0, proven: true };
  const onGrid = (mm: number): number => Math.round((mm + kerfMm) * GRID_PER_MM);
  const { kinds, kindOf } = joinEqual(
    pieces.map(({ lengthMm, count }) => ({ length: onGrid(lengthMm), count })),
  );
  const job: BarJob = {
    stocks: stocks.map(({ lengthMm, cost, limit }) => ({
      length: onGrid(lengthMm + FIT_TOLERANCE_MM),
      cost,
      limit,
    })),
    pieces: kinds,
  };
  const search = new BarSearch(job);
  if (kinds.length <= MOST_LENGTHS_SEARCHED * effort)
    search.run(Math.ceil((EDIT_STEPS * effort) / kinds.length));
  const bought = stocks.filter(({ limit }) => !Number.isFinite(limit));
  const [only] = bought;
  const simple = barBound(job).stocks;
  const byCost = bought.length === 1 && only !== undefined && only.cost > 0 ? search.bound / only.cost : 0;
  return {
    patterns: handedOut(search.best, pieces, kindOf),
    cost: search.bestCost,
    boundCost: search.bound,
    boundStocks: Math.max(simple, Math.round(byCost)),
    proven: search.done,
  };
}

function requireUsable({ pieces, stocks, kerfMm }: BarsToCut): void {
  if (!(kerfMm >= 0 && Number.isFinite(kerfMm)))
    throw new RangeError(`cutBars: kerfMm must be 0 or more, got ${kerfMm}`);
  for (const { lengthMm, cost, limit } of stocks)
    if (!(lengthMm > 0 && Number.isFinite(lengthMm) && cost >= 0 && Number.isFinite(cost) && limit >= 0))
      throw new RangeError(`cutBars: a stock of ${lengthMm} mm, cost ${cost}, limit ${limit} cannot be used`);
  const longest = Math.max(
    0,
    ...stocks.filter(({ limit }) => limit === Infinity).map(({ lengthMm }) => lengthMm),
  );
  for (const { lengthMm, count } of pieces)
    if (!(lengthMm > 0 && lengthMm <= longest + FIT_TOLERANCE_MM && Number.isInteger(count) && count > 0))
      throw new RangeError(
        `cutBars: ${count} pieces of ${lengthMm} mm cannot be cut from at most ${longest} mm`,
      );
}

/** Pieces of one length as one kind. */
function joinEqual(pieces: readonly { length: number; count: number }[]): {
  kinds: { length: number; count: number }[];
  kindOf: number[];
} {
  const known = new Map<number, number>();
  const kinds: { length: number; count: number }[] = [];
  const kindOf = pieces.map(({ length, count }) => {
    let kind = known.get(length);
    if (kind === undefined) {
      kind = kinds.push({ length, count: 0 }) - 1;
      known.set(length, kind);
    }
    (kinds[kind] as { count: number }).count += count;
    return kind;
  });
  return { kinds, kindOf };
}

/** Patterns of kinds as patterns of the pieces given, handed out in order; a pattern is split where a piece runs out. */
function handedOut(
  patterns: readonly BarPattern[],
  pieces: readonly { count: number }[],
  kindOf: readonly number[],
): BarPattern[] {
  const queues = new Map<number, { piece: number; left: number }[]>();
  for (const [piece, kind] of kindOf.entries()) {
    const entry = { piece, left: (pieces[piece] as { count: number }).count };
    const queue = queues.get(kind);
    if (queue === undefined) queues.set(kind, [entry]);
    else queue.push(entry);
  }
  const result: BarPattern[] = [];
  for (const { stock, cuts, times } of patterns) {
    let left = times;
    while (left > 0) {
      for (const { piece: kind } of cuts) {
        const queue = queues.get(kind) ?? [];
        while (queue[0]?.left === 0) queue.shift();
      }
      // One bar, then as many more as the pieces it begins with last.
      const bar: { piece: number; count: number }[] = [];
      for (const { piece: kind, count } of cuts) {
        let want = count;
        for (const entry of queues.get(kind) ?? []) {
          const now = Math.min(want, entry.left);
          if (now === 0) continue;
          entry.left -= now;
          want -= now;
          bar.push({ piece: entry.piece, count: now });
        }
      }
      let more = left - 1;
      for (const { piece, count } of bar)
        more = Math.min(more, Math.floor(leftOf(queues, kindOf, piece) / count));
      for (const { piece, count } of bar) takeOf(queues, kindOf, piece, count * more);
      result.push({ stock, cuts: bar, times: 1 + more });
      left -= 1 + more;
    }
  }
  return result;
}

type Queues = ReadonlyMap<number, { piece: number; left: number }[]>;

function leftOf(queues: Queues, kindOf: readonly number[], piece: number): number {
  return queues.get(kindOf[piece] as number)?.find((entry) => entry.piece === piece)?.left ?? 0;
}

function takeOf(queues: Queues, kindOf: readonly number[], piece: number, count: number): void {
  const entry = queues.get(kindOf[piece] as number)?.find((each) => each.piece === piece);
  if (entry !== undefined) entry.left -= count;
}
