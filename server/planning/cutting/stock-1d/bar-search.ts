import { repeatableRandom } from '../sheet-2d/repeatable-random.ts';
import { barBound } from './bar-bound.ts';
import { type BarJob, type BarPattern, type BarPiece, type BarStock, patternsCost } from './bar-job.ts';
import { type BarPrices, exactBars } from './exact-bars.ts';
import { cheapestStocks, fillBars } from './fill-bars.ts';
import { firstFitBars } from './first-fit-bars.ts';
import { type LpColumn, type LpState, PatternLp } from './pattern-lp.ts';
import { PatternPricer } from './pattern-pricer.ts';

/** Settings of the search; ours, no source. */
const FILL_NODES = 2000;
/** Longer lists are laid by first fit alone before the programme is solved. */
const MOST_FILLED = 2000;
const WHOLE = 1e-6;
const ROUNDING = 1e-12;
const LEAST_GAIN = 1e-7;
const SMOOTHING = 0.85;
/** A pattern that does not fit the rest costs this many of the dearest stock, so that it leaves the plan. */
const BAN_FACTOR = 3;
/** Steps of trying out all ways, after each dive. */
const EXACT_STEPS_BETWEEN_DIVES = 10;
const PIVOTS_BETWEEN_PRICINGS = 3;
/** Linear programmes of more rows than this are left alone: the first plan and the simple bound stand. */
const MOST_ROWS = 600;

/** Dives are given up after so many choices that led nowhere, in turn: short ones try more beginnings, long ones more ends. Ours, by trial. */
const MOST_FAILURES = [3, 20] as const;
/** At one place of a dive so many choices are taken back before the one that led there is. Ours, by trial. */
const MOST_REFUSED = 2;
/** So many places are kept to go back to, each with its programme: more than the failures can use up. */
const MOST_PLACES = 8;

/** What is left at one point of a dive. */
interface DiveNode {
  readonly lp: LpState;
  readonly counts: readonly number[];
  readonly limits: readonly number[];
  readonly fixed: readonly BarPattern[];
  readonly spent: number;
  /** Patterns that led nowhere from here. */
  readonly refused: Set<string>;
}

interface PoolPattern {
  readonly stock: number;
  readonly cuts: BarPattern['cuts'];
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
  /** Piece indices, longest first: the rows of the programme. */
  private readonly order: readonly number[];
  private readonly rowOf: readonly number[];
  private readonly random = repeatableRandom(1);
  private readonly pool: PoolPattern[] = [];
  private readonly known = new Set<string>();
  private readonly pricer: PatternPricer;
  private readonly costStep: number;
  private readonly dearest: number;
  private readonly limited: readonly number[];
  /** The best prices that the root of the programme has come to. */
  private prices: BarPrices | null = null;
  private readonly work: Generator<void, void, void>;

  constructor(job: BarJob) {
    this.job = job;
    this.order = job.pieces
      .map((_, piece) => piece)
      .sort((a, b) => this.lengthOf(b) - this.lengthOf(a) || a - b);
    const rowOf: number[] = [];
    for (const [row, piece] of this.order.entries()) rowOf[piece] = row;
    this.rowOf = rowOf;
    this.limited = job.stocks.flatMap(({ limit }, stock) => (Number.isFinite(limit) ? [stock] : []));
    this.costStep = commonStep(job.stocks.map(({ cost }) => cost));
    this.dearest = Math.max(...job.stocks.map(({ cost }) => cost));
    this.bound = this.upToStep(barBound(job).cost);
    const counts = job.pieces.map(({ count }) => count);
    const limits = job.stocks.map(({ limit }) => limit);
    this.best = [];
    this.bestCost = Number.POSITIVE_INFINITY;
    const bought = job.stocks.map((_, stock) => stock).filter((stock) => !this.limited.includes(stock));
    for (const main of bought) this.offer(cheapestStocks(job, firstFitBars(job, main, bought), limits));
    if (counts.reduce((sum, count) => sum + count, 0) <= MOST_FILLED)
      this.offer(this.complete(counts, limits) ?? []);
    this.pricer = new PatternPricer(job);
    this.work = this.solve();
  }

  /** True when the plan costs no more than the bound. */
  get done(): boolean {
    return this.bestCost <= this.bound * (1 + ROUNDING);
  }

  /** Works for so many steps, or until done; false when there is nothing left to try. */
  run(steps: number): boolean {
    for (let step = 0; step < steps && !this.done; step++) if (this.work.next().done === true) return false;
    return !this.done;
  }

  private *solve(): Generator<void, void, void> {
    if (this.job.pieces.length > MOST_ROWS) return;
    const counts = this.job.pieces.map(({ count }) => count);
    const limits = this.job.stocks.map(({ limit }) => limit);
    const lp = new PatternLp(
      this.order.map((piece) => counts[piece] as number),
      this.limited.map((stock) => limits[stock] as number),
      this.order.map((piece, row) => this.aloneColumn(piece, row, counts[piece] as number)),
    );
    for (const { stock, cuts } of this.best) this.addColumn(lp, stock, cuts);
    if (!(yield* this.relax(lp, counts, limits, 0, true))) return;
    const root = lp.save();
    const exact = this.exact();
    for (let round = 0; !this.done; round++) {
      lp.restore(root);
      yield* this.dive(lp, round);
      yield;
      for (let step = 0; step < EXACT_STEPS_BETWEEN_DIVES && !this.done; step++) {
        if (exact.next().done === true) break;
        yield;
      }
    }
  }

  /** All ways to cut that may be cheaper, for jobs with few enough of them. */
  private *exact(): Generator<void, void, void> {
    const { job, order, prices, costStep } = this;
    if (prices === null || costStep === 0) return;
    yield* exactBars({
      job,
      order,
      prices,
      costStep,
      bestCost: () => this.bestCost,
      found: (patterns) => this.offer(patterns),
      bounded: (cost) => {
        this.bound = Math.max(this.bound, cost);
      },
    });
  }

  /**
   * Fixes patterns one after another, the rest solved anew each time. Where the rest can no longer be cheap enough, the
   * last choice is taken back and another made, so often in all; then the dive is given up.
   */
  private *dive(lp: PatternLp, round: number): Generator<void, void, void> {
    const path: DiveNode[] = [
      {
        lp: lp.save(),
        counts: this.job.pieces.map(({ count }) => count),
        limits: this.job.stocks.map(({ limit }) => limit),
        fixed: [],
        spent: 0,
        refused: new Set(),
      },
    ];
    for (let failures = 0; ; ) {
      const node = path.at(-1);
      if (node === undefined) return;
      const chosen = this.choose(lp, node, round);
      const next = chosen.length === 0 ? null : this.fixed(lp, node, chosen);
      if (next !== null) {
        lp.banUnfit(BAN_FACTOR * this.dearest);
        const rest = this.complete(next.counts, next.limits);
        if (rest !== null) this.offer([...next.fixed, ...rest]);
        if (this.done || next.counts.every((count) => count === 0)) return;
        if (yield* this.relax(lp, next.counts, next.limits, next.spent, false)) {
          path.push({ ...next, lp: lp.save() });
          if (path.length > MOST_PLACES) path.shift();
          continue;
        }
      }
      if (++failures > (MOST_FAILURES[round % MOST_FAILURES.length] as number)) return;
      for (const { stock, cuts } of chosen.slice(0, 1)) node.refused.add(keyOf(stock, cuts));
      if (chosen.length === 0 || node.refused.size > MOST_REFUSED) path.pop();
      const back = path.at(-1);
      if (back === undefined) return;
      lp.restore(back.lp);
      lp.banUnfit(BAN_FACTOR * this.dearest);
    }
  }

  /** What is left after some more patterns are fixed; null when no plan is left. */
  private fixed(lp: PatternLp, node: DiveNode, chosen: readonly BarPattern[]): Omit<DiveNode, 'lp'> | null {
    const counts = node.counts.slice();
    const limits = node.limits.slice();
    let { spent } = node;
    for (const { stock, cuts, times } of chosen) {
      const rows: number[] = [];
      const values: number[] = [];
      for (const { piece, count } of cuts) {
        counts[piece] = (counts[piece] as number) - times * count;
        rows.push(this.rowOf[piece] as number);
        values.push(times * count);
      }
      limits[stock] = (limits[stock] as number) - times;
      const limitRow = this.limitRow(stock);
      if (limitRow !== null) {
        rows.push(limitRow);
        values.push(times);
      }
      spent += times * (this.job.stocks[stock] as BarStock).cost;
      if (!lp.fix({ rows, values })) return null;
    }
    return { counts, limits, spent, fixed: [...node.fixed, ...chosen], refused: new Set() };
  }

  /** Patterns to fix: whole shares, else one broken share: the largest at first, in later rounds any, large ones more often. */
  private choose(lp: PatternLp, { counts, limits, refused }: DiveNode, round: number): BarPattern[] {
    const shares: { stock: number; cuts: BarPattern['cuts']; share: number }[] = [];
    for (let row = 0; row < lp.basis.length; row++) {
      const share = lp.shares[row] as number;
      const { pattern } = lp.columns[lp.basis[row] as number] as { pattern: number };
      if (pattern < 0 || share <= WHOLE) continue;
      const { stock, cuts } = this.pool[pattern] as PoolPattern;
      shares.push({ stock, cuts, share });
    }
    shares.sort((a, b) => b.share - a.share);
    const chosen: BarPattern[] = [];
    const left = counts.slice();
    const stockLeft = limits.slice();
    const take = ({ stock, cuts }: PoolPattern, most: number): void => {
      // What the rest no longer asks for is not cut.
      const kept = cuts
        .map(({ piece, count }) => ({ piece, count: Math.min(count, left[piece] as number) }))
        .filter(({ count }) => count > 0);
      let times = Math.min(most, stockLeft[stock] as number);
      for (const { piece, count } of kept)
        times = Math.min(times, Math.floor((left[piece] as number) / count));
      if (kept.length === 0 || times < 1 || refused.has(keyOf(stock, kept))) return;
      for (const { piece, count } of kept) left[piece] = (left[piece] as number) - times * count;
      stockLeft[stock] = (stockLeft[stock] as number) - times;
      chosen.push({ stock, cuts: kept, times });
    };
    const keep = round === 0 ? 1 : 0.4 + 0.6 * this.random();
    if (refused.size === 0)
      for (const pattern of shares)
        if (pattern.share >= 1 - WHOLE && (round === 0 || this.random() < keep))
          take(pattern, Math.floor(pattern.share + WHOLE));
    if (chosen.length > 0) return chosen;
    let at = 0;
    if (round > 0 && refused.size === 0) while (at < shares.length - 1 && this.random() < 0.4) at++;
    for (; at < shares.length && chosen.length === 0; at++) take(shares[at] as PoolPattern, 1);
    return chosen;
  }

  /** Solves the relaxation of what is left; at the root its value becomes the bound. False when it costs too much. */
  private *relax(
    lp: PatternLp,
    counts: readonly number[],
    limits: readonly number[],
    spent: number,
    root: boolean,
  ): Generator<void, boolean, void> {
    let bound = 0;
    let bestWorth = Number.NEGATIVE_INFINITY;
    let centre: number[] | null = null;
    let pull = SMOOTHING;
    while (lp.improve());
    for (;;) {
      yield;
      const here = this.order.map((_, row) => Math.max(0, lp.duals[row] as number));
      const smooth: number[] | null = centre;
      const values: number[] =
        smooth === null ? here : here.map((dual, row) => pull * (smooth[row] as number) + (1 - pull) * dual);
      const priced = this.pricer.price(this.order, values, counts);
      // Farley: duals shrunk until no pattern is worth more than it costs are feasible, and so give a bound.
      let shrink = 1;
      let worth = 0;
      for (const [stock, { cost }] of this.job.stocks.entries()) {
        if ((limits[stock] as number) < 1) continue;
        const net = cost - this.stockDual(lp, stock);
        if (net > 0) shrink = Math.max(shrink, priced.mostAt(stock) / net);
        else if (priced.mostAt(stock) > WHOLE) shrink = Number.POSITIVE_INFINITY;
        if (this.limitRow(stock) !== null) worth += this.stockDual(lp, stock) * (limits[stock] as number);
      }
      for (const [row, piece] of this.order.entries())
        worth += ((values[row] as number) * (counts[piece] as number)) / shrink;
      if (worth > bestWorth) {
        bestWorth = worth;
        if (root) this.prices = this.pricesOf(lp, values, shrink);
        centre = values;
      }
      bound = Math.max(bound, this.upToStep(worth));
      if (root && bound > this.bound) this.bound = bound;
      if (spent + bound >= this.bestCost - this.costStep * WHOLE) return false;
      if (this.upToStep(lp.cost) <= bound + WHOLE) return true;

      let entered = false;
      for (const [stock, { cost }] of this.job.stocks.entries()) {
        if ((limits[stock] as number) < 1) continue;
        const cuts: { piece: number; count: number }[] = [];
        let value = 0;
        for (const [row, count] of priced.cutsAt(stock)) {
          cuts.push({ piece: this.order[row] as number, count });
          value += count * (here[row] as number);
        }
        if (value <= cost - this.stockDual(lp, stock) + LEAST_GAIN) continue;
        if (this.addColumn(lp, stock, cuts)) entered = true;
      }
      if (entered) pull = SMOOTHING;
      else if (values === here || pull === 0) {
        if (!lp.improve()) return true;
      } else pull = pull > 0.3 ? pull / 2 : 0;
      for (let pivots = 0; pivots < PIVOTS_BETWEEN_PRICINGS && lp.improve(); pivots++);
    }
  }

  /** Prices by piece and stock, at which no pattern is worth more than it costs. */
  private pricesOf(lp: PatternLp, values: readonly number[], shrink: number): BarPrices {
    return {
      pieces: this.job.pieces.map((_, piece) => (values[this.rowOf[piece] as number] as number) / shrink),
      stocks: this.job.stocks.map((_, stock) => this.stockDual(lp, stock)),
    };
  }

  /** Price of one more of a limited stock, 0 or less; 0 for stock without limit. */
  private stockDual(lp: PatternLp, stock: number): number {
    const row = this.limitRow(stock);
    return row === null ? 0 : Math.min(0, lp.duals[row] as number);
  }

  private limitRow(stock: number): number | null {
    const at = this.limited.indexOf(stock);
    return at < 0 ? null : this.order.length + at;
  }

  /** Adds a pattern to the programme and brings it into the plan; false when it is there already. */
  private addColumn(lp: PatternLp, stock: number, cuts: BarPattern['cuts']): boolean {
    const pattern = this.remember(stock, cuts);
    if (pattern === null) return false;
    const rows = cuts.map(({ piece }) => this.rowOf[piece] as number);
    const values = cuts.map(({ count }) => count);
    const limitRow = this.limitRow(stock);
    if (limitRow !== null) {
      rows.push(limitRow);
      values.push(1);
    }
    return lp.enter(lp.add({ cost: (this.job.stocks[stock] as BarStock).cost, rows, values, pattern }));
  }

  /** As many of one piece as the cheapest fitting stock without limit holds. */
  private aloneColumn(piece: number, row: number, count: number): LpColumn {
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
    const pattern = this.remember(best, [{ piece, count: times }]) ?? -1;
    return { cost, rows: [row], values: [times], pattern };
  }

  /** Adds a pattern to the pool; null when it is there already. */
  private remember(stock: number, cuts: BarPattern['cuts']): number | null {
    const key = keyOf(stock, cuts);
    if (this.known.has(key)) return null;
    this.known.add(key);
    return this.pool.push({ stock, cuts }) - 1;
  }

  private complete(counts: readonly number[], limits: readonly number[]): BarPattern[] | null {
    const patterns = fillBars(this.job, counts, limits, this.order, FILL_NODES);
    return patterns === null ? null : cheapestStocks(this.job, patterns, limits);
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
