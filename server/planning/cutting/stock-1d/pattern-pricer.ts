import type { BarJob, BarPiece, BarStock } from './bar-job.ts';
import { BestFill } from './best-fill.ts';
import { searchFill } from './search-fill.ts';

/** Above this capacity, in common units of the lengths, a search replaces the table. */
const MOST_CAPACITY = 60_000;
const SEARCH_NODES = 20_000;

export interface Priced {
  /** Value of the best pattern found on a stock. */
  valueAt(stock: number): number;
  /** No pattern of the stock is worth more. */
  mostAt(stock: number): number;
  /** The pattern found: per row, how many. */
  cutsAt(stock: number): Map<number, number>;
}

/** Finds the most valuable pattern of every stock for given values of the pieces. */
export class PatternPricer {
  private readonly unit: number;
  private readonly job: BarJob;
  private readonly fill: BestFill | null;

  constructor(job: BarJob) {
    this.job = job;
    let unit = 0;
    for (const { length } of job.pieces) unit = commonDivisor(unit, length);
    this.unit = Math.max(1, unit);
    const capacity = Math.max(...job.stocks.map(({ length }) => Math.floor(length / this.unit)));
    this.fill = capacity <= MOST_CAPACITY ? new BestFill(capacity) : null;
  }

  /** `rows`: piece index per row; `values`: worth of one piece per row; `counts`: pieces left, by piece index. */
  price(rows: readonly number[], values: readonly number[], counts: readonly number[]): Priced {
    const lengths = rows.map((piece) => (this.job.pieces[piece] as BarPiece).length);
    const most = rows.map((piece) => counts[piece] as number);
    const { fill, unit, job } = this;
    if (fill !== null) {
      fill.solve(
        lengths.map((length) => length / unit),
        values,
        most,
      );
      const room = (stock: number): number => Math.floor((job.stocks[stock] as BarStock).length / unit);
      return {
        valueAt: (stock) => fill.valueAt(room(stock)),
        mostAt: (stock) => fill.valueAt(room(stock)),
        cutsAt: (stock) => fill.cutsAt(room(stock)),
      };
    }
    const found = job.stocks.map(({ length }) => searchFill(length, lengths, values, most, SEARCH_NODES));
    return {
      valueAt: (stock) => (found[stock] as { value: number }).value,
      mostAt: (stock) => (found[stock] as { most: number }).most,
      cutsAt: (stock) => (found[stock] as { cuts: Map<number, number> }).cuts,
    };
  }
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
