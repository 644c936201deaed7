import { type Cover, type CutBound, leastCover, wholeCoverCost } from '../least-cover.ts';
import { dualFeasibleFunctions } from '../sheet-2d/dual-feasible-functions.ts';
import type { BarJob } from './bar-job.ts';

/** Enough thresholds for every length in a workshop's list; long lists are sampled. */
const MOST_FUNCTIONS = 200;
const MOST_WEIGHTS = 200_000;

/**
 * How many bars, and how much money, every plan needs at least, without solving a linear programme.
 *
 * `job`: see bar-job.ts. Result: cost and count.
 * Source: S. Martello and P. Toth, Knapsack Problems (1990), section 8.3 (bound L2), which the thresholds among the dual
 * feasible functions contain.
 */
export function barBound({ pieces, stocks }: BarJob): CutBound {
  if (pieces.length === 0) return { cost: 0, stocks: 0 };
  const limit = Math.min(MOST_FUNCTIONS, Math.max(2, Math.floor(MOST_WEIGHTS / pieces.length)));
  const most = Math.max(...stocks.map(({ length }) => length));
  const bound = { cost: 0, stocks: 0 };
  let tightest: Cover | null = null;
  for (const image of dualFeasibleFunctions(
    most,
    pieces.map(({ length }) => length),
    limit,
  )) {
    let weight = 0;
    for (const { length, count } of pieces) weight += count * image(length);
    const cover = leastCover(
      weight,
      stocks.map(({ length }) => image(length)),
      stocks,
    );
    bound.stocks = Math.max(bound.stocks, cover.count);
    if (cover.cost <= bound.cost) continue;
    bound.cost = cover.cost;
    tightest = cover;
  }
  if (tightest !== null) bound.cost = Math.max(bound.cost, wholeCoverCost(tightest));
  return bound;
}
