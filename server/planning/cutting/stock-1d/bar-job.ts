/**
 * One bar-cutting job (boards, rolls, bars) in whole units, kerf already in: every piece and every stock is one kerf
 * longer than it is, so that pieces simply follow each other.
 */
export interface BarJob {
  readonly stocks: readonly BarStock[];
  readonly pieces: readonly BarPiece[];
}

export interface BarStock {
  readonly length: number;
  /** What one costs, 0 or more, in one unit for all stocks. */
  readonly cost: number;
  /** How many there are; Infinity for stock to buy. */
  readonly limit: number;
}

export interface BarPiece {
  readonly length: number;
  readonly count: number;
}

/** One way to cut a stock, and how often: piece indices with their numbers. */
export interface BarPattern {
  readonly stock: number;
  readonly cuts: readonly { readonly piece: number; readonly count: number }[];
  readonly times: number;
}

/** What the patterns cost together, in the job's unit. */
export function patternsCost(job: BarJob, patterns: readonly BarPattern[]): number {
  let cost = 0;
  for (const { stock, times } of patterns) cost += times * (job.stocks[stock] as BarStock).cost;
  return cost;
}
