/** Stock as far as its cost matters. */
export interface PricedStock {
  readonly cost: number;
  /** How many there are; Infinity for stock to buy. */
  readonly limit: number;
}

/** Guards against the last bit of a sum pushing a count up by one. */
const ROUNDING = 1e-9;
/** Mixes of several stocks are counted out exactly up to this many sheets; beyond, shares of a sheet are allowed. */
const EXACT_MIX_SHEETS = 60;
const EXACT_MIX_STOCKS = 4;

export interface CutBound {
  /** No plan costs less. */
  readonly cost: number;
  /** No plan buys fewer stocks. */
  readonly stocks: number;
}

export interface Cover {
  /** Weight left for stock that must be bought. */
  readonly left: number;
  /** Stock to buy, cheapest per weight first. */
  readonly bought: readonly { readonly cost: number; readonly hold: number }[];
  readonly count: number;
  readonly cost: number;
}

/** Least count and least cost of bought stock whose weights cover `weight`, free stock used up first. */
export function leastCover(weight: number, holds: readonly number[], stocks: readonly PricedStock[]): Cover {
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
export function wholeCoverCost({ left, bought, count, cost }: Cover): number {
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
