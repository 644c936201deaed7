import { GRID_PER_MM } from '../cutting/constants.ts';
import { barBound } from '../cutting/stock-1d/bar-bound.ts';
import { cutBars } from '../cutting/stock-1d/cut-bars.ts';
import {
  MOST_LENGTHS_SEARCHED,
  MOST_STRIPS_SEARCHED,
  MOST_STRIPS_TO_A_ROLL,
  PATTERN_EFFORT,
  SAME_LENGTH_MM,
} from './constants.ts';
import type { RollPattern, StripGroup } from './fill-rolls.ts';
import type { RollStock } from './roll-stock.ts';

/** What is cut from one kind of roll. */
export interface RollCut {
  readonly pattern: RollPattern;
  /** Place in the list of rolls on hand or of offers. */
  readonly from: { readonly onHand: number } | { readonly offer: number };
}

export interface LeastCostRolls {
  /** Null where the known cost cannot be beaten. */
  readonly cuts: readonly RollCut[] | null;
  /** Minor units; mm where no price is known. */
  readonly cost: number;
  /** No choice of rolls costs less. */
  readonly boundCost: number;
}

/**
 * Which rolls, on hand and bought, hold the strips at least cost, with a bound on that cost?
 *
 * `groups`: strips, lengths in mm falling. `stock`: rolls on hand, which cost nothing, and offers. `knownCost`: of a choice
 * that is there already. Result: the rolls, those on hand first; null for a job too large to be quick, and where a
 * strip is longer than every offer. Where no price is known the metres bought are the cost, mm. Source: see cutBars;
 * the pattern search is left out where a roll holds so many strips that its patterns are past counting.
 *
 * Example: strips of 6, 5, 5, 4 m and two rolls of 10 m at 10: 6 + 4 and 5 + 5, cost 20, bound 20.
 */
export function leastCostRolls(
  groups: readonly StripGroup[],
  stock: RollStock,
  knownCost: number,
): LeastCostRolls | null {
  const strips = groups.reduce((sum, { count }) => sum + count, 0);
  const longestMm = Math.max(0, ...stock.offers.map(({ lengthMm }) => lengthMm));
  const tooLong = groups.some(({ lengthMm }) => lengthMm > longestMm + SAME_LENGTH_MM);
  if (
    groups.length === 0 ||
    groups.length > MOST_LENGTHS_SEARCHED ||
    strips > MOST_STRIPS_SEARCHED ||
    tooLong
  )
    return null;
  const stocks = [
    ...stock.onHand.map(({ lengthMm, count }) => ({ lengthMm, cost: 0, limit: count })),
    ...stock.offers.map(({ lengthMm, priceMinor }) => ({
      lengthMm,
      cost: stock.priced ? (priceMinor ?? 0) : Math.round(lengthMm),
      limit: Number.POSITIVE_INFINITY,
    })),
  ];
  const bound = barBound({
    pieces: groups.map(({ lengthMm, count }) => ({ length: Math.round(lengthMm * GRID_PER_MM), count })),
    stocks: stocks.map(({ lengthMm, ...one }) => ({ ...one, length: Math.ceil(lengthMm * GRID_PER_MM) })),
  });
  if (knownCost <= bound.cost) return { cuts: null, cost: knownCost, boundCost: bound.cost };
  const shortestMm = groups[groups.length - 1]?.lengthMm ?? longestMm;
  const effort = longestMm / shortestMm > MOST_STRIPS_TO_A_ROLL ? 0 : PATTERN_EFFORT;
  const plan = cutBars({ pieces: groups, stocks, kerfMm: 0, effort });
  const cuts = plan.patterns.map(({ stock: at, cuts: pieces, times }): RollCut => {
    const onHand = at < stock.onHand.length;
    const { lengthMm: rollMm } = (onHand ? stock.onHand[at] : stock.offers[at - stock.onHand.length]) as {
      lengthMm: number;
    };
    const strips = pieces.map(({ piece, count }) => ({ ...(groups[piece] as StripGroup), count }));
    strips.sort((one, other) => other.lengthMm - one.lengthMm);
    return {
      pattern: { rolls: times, rollMm, cuts: strips },
      from: onHand ? { onHand: at } : { offer: at - stock.onHand.length },
    };
  });
  cuts.sort((one, other) => rank(one) - rank(other));
  return { cuts, cost: plan.cost, boundCost: plan.boundCost };
}

function rank({ from }: RollCut): number {
  return 'onHand' in from ? 0 : 1;
}
