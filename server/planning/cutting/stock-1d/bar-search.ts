import { repeatableRandom } from '../sheet-2d/repeatable-random.ts';
import { barBound } from './bar-bound.ts';
import { type BarJob, type BarPattern, type BarPiece, type BarStock, patternsCost } from './bar-job.ts';
import { cheapestStocks, fillBars } from './fill-bars.ts';
import { PatternLp } from './pattern-lp.ts';
import { PatternPricer } from './pattern-pricer.ts';

/** Settings of the search; ours, no source. */
const FILL_NODES = 2000;
const WHOLE = 1e-6;
/** Linear programmes of more rows than this are left alone: the first plan and the simple bound stand. */
const MOST_ROWS = 600;

interface PoolPattern {
  readonly stock: number;
  readonly pieces: readonly number[];
  readonly counts: readonly number[];
}

interface Relaxed {
  /** No completion is cheap enough. */
  readonly hopeless: boolean;
  readonly shares: readonly { readonly pattern: PoolPattern; readonly share: number }[];
}

/**
 * Searches for the cheapest bars to cut all pieces from, step by step; the caller owns the time.
 *
 * First plans by filling bars one at a time; a bound by dual feasible functions; then the linear relaxation with
 * patterns made as they are needed, whose value is a far better bound; then dives: patterns used more than once are
 * fixed, or the largest share, and the rest is solved again, until nothing is left. Dives are repeated with other
 * choices until the plan meets the bound.
 * Source: P. C. Gilmore and R. E. Gomory, "A linear programming approach to the cutting stock problem", Operations Research
 * 9 (1961) and 11 (1963); bound from unfinished programmes: A. A. Farley, Operations Research 38 (1990).
 * `job`: whole lengths, see bar-job.ts; every piece fits a stock without limit. Same job, same plan.
 */
export class BarSearch {
  best: readonly BarPattern[];
  bestCost: number;
  /** No plan costs less. */
  bound: number;
  private readonly job: BarJob;
  private readonly order: readonly number[];
  private readonly random = repeatableRandom(1);
  private readonly pool: PoolPattern[] = [];
  private readonly known = new Set<string>();
  private readonly pricer: PatternPricer;
  private readonly costStep: number;
  private readonly limited: readonly number[];
  private readonly work: Generator<void, void, void>;

  constructor(job: BarJob) {
    this.job = job;
    this.order = job.pieces
      .map((_, piece) => piece)
      .sort((a, b) => this.lengthOf(b) - this.lengthOf(a) || a - b);
    this.limited = job.stocks.flatMap(({ limit }, stock) => (Number.isFinite(limit) ? [stock] : []));
    this.costStep = commonStep(job.stocks.map(({ cost }) => cost));
    this.bound = this.upToStep(barBound(job).cost);
    const counts = job.pieces.map(({ count }) => count);
    const limits = job.stocks.map(({ limit }) => limit);
    this.best = [];
    this.bestCost = Number.POSITIVE_INFINITY;
    for (const nodes of [1, FILL_NODES]) this.offer(this.complete(counts, limits, nodes) ?? []);
    this.pricer = new PatternPricer(job);
    this.work = this.solve();
  }

  /** True when the plan costs no more than the bound. */
  get done(): boolean {
    return this.bestCost <= this.bound;
  }

  /** Works for so many steps, or until done; false when there is nothing left to try. */
  run(steps: number): boolean {
    for (let step = 0; step < steps && !this.done; step++) if (this.work.next().done === true) return false;
    return !this.done;
  }

  private *solve(): Generator<void, void, void> {
    if (this.job.pieces.length > MOST_ROWS) return;
    for (const pattern of this.best) this.remember(pattern.stock, pattern.cuts);
    for (let dive = 0; !this.done; dive++) yield* this.dive(dive);
  }

  private *dive(round: number): Generator<void, void, void> {
    const counts = this.job.pieces.map(({ count }) => count);
    const limits = this.job.stocks.map(({ limit }) => limit);
    const fixed: BarPattern[] = [];
    let spent = 0;
    for (;;) {
      const relaxed: Relaxed = yield* this.relax(counts, limits, spent, fixed.length === 0);
      if (relaxed.hopeless || this.done) return;
      const chosen = this.choose(relaxed.shares, round);
      for (const { pattern, times } of chosen) {
        let possible = Math.min(times, limits[pattern.stock] as number);
        for (const [at, piece] of pattern.pieces.entries())
          possible = Math.min(
            possible,
            Math.floor((counts[piece] as number) / (pattern.counts[at] as number)),
          );
        if (possible < 1) continue;
        for (const [at, piece] of pattern.pieces.entries())
          counts[piece] = (counts[piece] as number) - possible * (pattern.counts[at] as number);
        limits[pattern.stock] = (limits[pattern.stock] as number) - possible;
        spent += possible * (this.job.stocks[pattern.stock] as BarStock).cost;
        fixed.push({
          stock: pattern.stock,
          cuts: pattern.pieces.map((piece, at) => ({ piece, count: pattern.counts[at] as number })),
          times: possible,
        });
      }
      const rest = this.complete(counts, limits, FILL_NODES);
      if (rest !== null) this.offer([...fixed, ...rest]);
      if (this.done || counts.every((count) => count === 0)) return;
      yield;
    }
  }

  /** Whole shares, else one broken share: the largest at first, in later rounds any, large ones more often. */
  private choose(shares: Relaxed['shares'], round: number): { pattern: PoolPattern; times: number }[] {
    const whole = shares.filter(({ share }) => share >= 1 - WHOLE);
    if (whole.length > 0)
      return whole.map(({ pattern, share }) => ({ pattern, times: Math.floor(share + WHOLE) }));
    const sorted = shares.slice().sort((a, b) => b.share - a.share);
    let at = 0;
    if (round > 0) while (at < sorted.length - 1 && this.random() < 0.3) at++;
    const { pattern } = sorted[at] as { pattern: PoolPattern };
    return [{ pattern, times: 1 }];
  }

  /** Solves the relaxation of what is left; at the root its value becomes the bound. */
  private *relax(
    counts: readonly number[],
    limits: readonly number[],
    spent: number,
    root: boolean,
  ): Generator<void, Relaxed, void> {
    const rows = this.order.filter((piece) => (counts[piece] as number) > 0);
    const rowOf = new Map(rows.map((piece, row) => [piece, row]));
    const limitRow = new Map(this.limited.map((stock, at) => [stock, rows.length + at]));
    const lp = new PatternLp(
      rows.map((piece) => counts[piece] as number),
      this.limited.map((stock) => limits[stock] as number),
      rows.map((piece, row) => this.aloneColumn(piece, row, counts[piece] as number)),
    );
    const addPattern = (index: number): number | null => {
      const pattern = this.pool[index] as PoolPattern;
      if ((limits[pattern.stock] as number) < 1) return null;
      const columnRows: number[] = [];
      for (const [at, piece] of pattern.pieces.entries()) {
        if ((pattern.counts[at] as number) > (counts[piece] as number)) return null;
        columnRows.push(rowOf.get(piece) as number);
      }
      const values = pattern.counts.slice();
      const limit = limitRow.get(pattern.stock);
      if (limit !== undefined) {
        columnRows.push(limit);
        values.push(1);
      }
      const { cost } = this.job.stocks[pattern.stock] as BarStock;
      return lp.add({ cost, rows: columnRows, values, pattern: index });
    };
    for (let index = 0; index < this.pool.length; index++) addPattern(index);

    let bound = 0;
    const target = this.bestCost - this.costStep / 2;
    for (let pivots = 1; lp.improve(); pivots++) if (pivots % 20 === 0) yield;
    for (;;) {
      yield;
      const values = rows.map((_, row) => Math.max(0, lp.duals[row] as number));
      const priced = this.pricer.price(rows, values, counts);
      // Farley: duals shrunk until no pattern is worth more than it costs are feasible, and so give a bound.
      let shrink = 1;
      for (const [stock, { cost }] of this.job.stocks.entries()) {
        if ((limits[stock] as number) < 1) continue;
        const limit = limitRow.get(stock);
        const net = cost - (limit === undefined ? 0 : Math.min(0, lp.duals[limit] as number));
        if (net > 0) shrink = Math.max(shrink, priced.mostAt(stock) / net);
        else if (priced.mostAt(stock) > WHOLE) shrink = Number.POSITIVE_INFINITY;
      }
      let worth = 0;
      for (const [row, piece] of rows.entries())
        worth += ((values[row] as number) * (counts[piece] as number)) / shrink;
      for (const [stock, row] of limitRow)
        worth += Math.min(0, lp.duals[row] as number) * (limits[stock] as number);
      bound = Math.max(bound, this.upToStep(worth));
      if (root && bound > this.bound) this.bound = bound;
      if (spent + bound > target) return { hopeless: true, shares: [] };

      let entered = 0;
      if (this.upToStep(lp.cost) > bound + WHOLE) {
        for (const [stock, { cost }] of this.job.stocks.entries()) {
          if ((limits[stock] as number) < 1) continue;
          const limit = limitRow.get(stock);
          const net = cost - (limit === undefined ? 0 : (lp.duals[limit] as number));
          if (priced.valueAt(stock) <= net + 1e-7) continue;
          const index = this.remember(
            stock,
            [...priced.cutsAt(stock)].map(([row, count]) => ({ piece: rows[row] as number, count })),
          );
          if (index === null) continue;
          const column = addPattern(index);
          if (column !== null && lp.enter(column)) entered++;
        }
      }
      if (entered === 0) break;
      for (let pivots = 1; lp.improve(); pivots++) if (pivots % 20 === 0) yield;
    }
    const shares: { pattern: PoolPattern; share: number }[] = [];
    for (let row = 0; row < lp.basis.length; row++) {
      const share = lp.shares[row] as number;
      const column = lp.columns[lp.basis[row] as number] as { pattern: number };
      if (column.pattern >= 0 && share > WHOLE)
        shares.push({ pattern: this.pool[column.pattern] as PoolPattern, share });
    }
    return { hopeless: shares.length === 0, shares };
  }

  /** As many of one piece as the cheapest fitting stock without limit holds. */
  private aloneColumn(piece: number, row: number, count: number): ReturnType<typeof columnOf> {
    const length = this.lengthOf(piece);
    let best = -1;
    let bestRate = Number.POSITIVE_INFINITY;
    for (const [stock, { length: room, cost, limit }] of this.job.stocks.entries()) {
      if (Number.isFinite(limit) || length > room) continue;
      const rate = cost / Math.min(count, Math.floor(room / length));
      if (rate < bestRate) {
        best = stock;
        bestRate = rate;
      }
    }
    const { length: room, cost } = this.job.stocks[best] as BarStock;
    const times = Math.min(count, Math.floor(room / length));
    this.remember(best, [{ piece, count: times }]);
    return columnOf(cost, row, times, this.indexOf(best, [{ piece, count: times }]));
  }

  private readonly indexByKey = new Map<string, number>();

  private indexOf(stock: number, cuts: BarPattern['cuts']): number {
    return this.indexByKey.get(keyOf(stock, cuts)) as number;
  }

  /** Adds a pattern to the pool; null when it is there already. */
  private remember(stock: number, cuts: BarPattern['cuts']): number | null {
    const key = keyOf(stock, cuts);
    if (this.known.has(key)) return null;
    this.known.add(key);
    const index =
      this.pool.push({
        stock,
        pieces: cuts.map(({ piece }) => piece),
        counts: cuts.map(({ count }) => count),
      }) - 1;
    this.indexByKey.set(key, index);
    return index;
  }

  private complete(counts: readonly number[], limits: readonly number[], nodes: number): BarPattern[] | null {
    const patterns = fillBars(this.job, counts, limits, this.order, nodes);
    return patterns === null ? null : cheapestStocks(this.job, patterns);
  }

  private offer(patterns: readonly BarPattern[]): void {
    const cost = patternsCost(this.job, patterns);
    if (patterns.length === 0 && this.job.pieces.length > 0) return;
    if (cost >= this.bestCost) return;
    this.best = patterns;
    this.bestCost = cost;
  }

  private lengthOf(piece: number): number {
    return (this.job.pieces[piece] as BarPiece).length;
  }

  /** Costs come in whole steps, so a bound may be rounded up to the next one. */
  private upToStep(cost: number): number {
    if (this.costStep === 0) return cost;
    return Math.ceil(cost / this.costStep - WHOLE) * this.costStep;
  }
}

function columnOf(cost: number, row: number, times: number, pattern: number) {
  return { cost, rows: [row], values: [times], pattern };
}

function keyOf(stock: number, cuts: BarPattern['cuts']): string {
  const sorted = cuts.slice().sort((a, b) => a.piece - b.piece);
  return `${stock}:${sorted.map(({ piece, count }) => `${piece}x${count}`).join(',')}`;
}

/** Largest amount of which every cost is a multiple; 0 when a cost is not a whole number. */
function commonStep(costs: readonly number[]): number {
  let step = 0;
  for (const cost of costs) {
    if (!Number.isInteger(cost)) return 0;
    let [a, b] = [step, cost];
    while (b > 0) [a, b] = [b, a % b];
    step = a;
  }
  return step;
}
