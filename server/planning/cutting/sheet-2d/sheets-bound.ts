import { dualFeasibleFunctions } from './dual-feasible-functions.ts';
import type { JobStock, SheetJob } from './sheet-job.ts';

/** Guards against the last bit of a sum pushing a count up by one. */
const ROUNDING = 1e-9;
/** Mixes of several stocks are counted out exactly up to this many sheets; beyond, shares of a sheet are allowed. */
const EXACT_MIX_SHEETS = 60;
const EXACT_MIX_STOCKS = 4;

export interface SheetsBound {
  /** No plan costs less. */
  readonly cost: number;
  /** No plan buys fewer sheets. */
  readonly stocks: number;
}

/**
 * How many sheets, and how much money, every plan needs at least.
 *
 * `job`: see sheet-job.ts; stocks with a limit count as free of their limit unless they cost nothing. `effort`: about
 * how many piece weights may be looked at; more gives a better bound.
 * Result: the greatest bound over all pairs of dual feasible functions, one per direction; the pair of plain lengths
 * is the area bound. It holds for cuts of any kind, so also for guillotine cuts.
 * Source: as for dualFeasibleFunctions. Pieces that may be turned count the lesser of their two weights.
 */
export function sheetsBound(job: SheetJob, effort: number): SheetsBound {
  const { pieces, stocks } = job;
  if (pieces.length === 0) return { cost: 0, stocks: 0 };
  const limit = Math.max(2, Math.floor(Math.sqrt(effort / pieces.length)));
  const turnable = pieces.filter((piece) => piece.turnable);
  const lengths = [...pieces.map((piece) => piece.length), ...turnable.map((piece) => piece.width)];
  const widths = [...pieces.map((piece) => piece.width), ...turnable.map((piece) => piece.length)];
  const alongs = dualFeasibleFunctions(Math.max(...stocks.map((stock) => stock.length)), lengths, limit);
  const acrosses = dualFeasibleFunctions(Math.max(...stocks.map((stock) => stock.width)), widths, limit);

  // Images once per function, so that a pair costs one multiplication per piece.
  const image = (functions: typeof alongs, side: 'length' | 'width'): Float64Array[] =>
    functions.map((function_) => Float64Array.from(pieces, (piece) => function_(piece[side])));
  const lengthAlong = image(alongs, 'length');
  const widthAcross = image(acrosses, 'width');
  const widthAlong = turnable.length > 0 ? image(alongs, 'width') : lengthAlong;
  const lengthAcross = turnable.length > 0 ? image(acrosses, 'length') : widthAcross;

  const bound = { cost: 0, stocks: 0 };
  let tightest: Cover | null = null;
  for (const [first, along] of alongs.entries()) {
    for (const [second, across] of acrosses.entries()) {
      const plainAlong = lengthAlong[first] as Float64Array;
      const plainAcross = widthAcross[second] as Float64Array;
      const turnedAlong = widthAlong[first] as Float64Array;
      const turnedAcross = lengthAcross[second] as Float64Array;
      let weight = 0;
      for (let index = 0; index < pieces.length; index++) {
        const piece = pieces[index] as { count: number; turnable: boolean };
        let one = (plainAlong[index] as number) * (plainAcross[index] as number);
        if (piece.turnable)
          one = Math.min(one, (turnedAlong[index] as number) * (turnedAcross[index] as number));
        weight += piece.count * one;
      }
      const holds = stocks.map((stock) => along(stock.length) * across(stock.width));
      const cover = coverOf(weight, holds, stocks);
      bound.stocks = Math.max(bound.stocks, cover.count);
      if (cover.cost <= bound.cost) continue;
      bound.cost = cover.cost;
      tightest = cover;
    }
  }
  // Whole sheets of several prices are counted out for the tightest pair only.
  if (tightest !== null) bound.cost = Math.max(bound.cost, wholeCoverCost(tightest));
  return bound;
}

interface Cover {
  /** Weight left for stock that must be bought. */
  readonly left: number;
  /** Stock to buy, cheapest per weight first. */
  readonly bought: readonly { readonly cost: number; readonly hold: number }[];
  readonly count: number;
  readonly cost: number;
}

/** Least count and least cost of bought stock whose weights cover `weight`, free stock used up first. */
function coverOf(weight: number, holds: readonly number[], stocks: readonly JobStock[]): Cover {
  let left = weight * (1 - ROUNDING);
  const bought: { cost: number; hold: number }[] = [];
  for (const [index, stock] of stocks.entries()) {
    const hold = holds[index] as number;
    if (stock.cost === 0 && Number.isFinite(stock.limit)) left -= hold * stock.limit;
    else if (hold > 0) bought.push({ cost: stock.cost, hold });
  }
  if (left <= 0 || bought.length === 0) return { left: 0, bought, count: 0, cost: 0 };
  bought.sort((a, b) => a.cost / a.hold - b.cost / b.hold);
  const count = Math.ceil(left / Math.max(...bought.map(({ hold }) => hold)));
  const { cost, hold } = bought[0] as { cost: number; hold: number };
  return { left, bought, count, cost: bought.length === 1 ? count * cost : (left * cost) / hold };
}

/** The same cost with whole sheets only, by trying the counts of each stock. */
function wholeCoverCost({ left, bought, count, cost }: Cover): number {
  if (bought.length === 1 || count > EXACT_MIX_SHEETS || bought.length > EXACT_MIX_STOCKS) return cost;
  let best = Number.POSITIVE_INFINITY;
  const cover = (rest: number, from: number, spent: number): void => {
    if (rest <= 0) best = Math.min(best, spent);
    const stock = bought[from];
    // The cheapest per weight come first, so this stock's rate bounds what the rest costs.
    if (rest <= 0 || stock === undefined || spent + (rest * stock.cost) / stock.hold >= best) return;
    for (let sheets = Math.ceil(rest / stock.hold); sheets >= 0; sheets--)
      cover(rest - sheets * stock.hold, from + 1, spent + sheets * stock.cost);
  };
  cover(left, 0, 0);
  return best;
}
