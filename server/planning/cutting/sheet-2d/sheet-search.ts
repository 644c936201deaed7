import { OpenSheet } from './open-sheet.ts';
import { repeatableRandom } from './repeatable-random.ts';
import type { JobPiece, JobStock, SheetJob } from './sheet-job.ts';
import { LEAF, type SliceNode } from './slicing-tree.ts';

/** Settings of the search, found by trial on public instances; ours, no source. */
const MEAN_REMOVED = 20;
const MOST_TOUCHED = 6;
const HISTORY = 100;
const ORDER_NOISE = 0.5;
const BLINK = 0.1;
const NONE: ReadonlySet<SliceNode> = new Set();
const EMPTINESS_WEIGHT = 0.3;

/**
 * Searches for a cheaper set of sheets, step by step; the caller owns the time.
 *
 * Ruin and recreate with a goal: one sheet is taken away, so that some pieces lie outside; each step empties parts of
 * a few sheets and puts everything back in another order. When all pieces are in, a cheaper plan is found and the
 * goal is lowered again. A worse step is taken when it is no worse than the plan of `HISTORY` steps ago.
 * Source: J. Gardeyn and T. Wauters, "A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing
 * problem with guillotine constraints", European Journal of Operational Research 301 (2022); late acceptance:
 * E. K. Burke and Y. Bykov, European Journal of Operational Research 258 (2017). Same start, same plan.
 */
export class SheetSearch {
  best: readonly OpenSheet[];
  bestCost: number;
  /** Places looked at so far, about: the same on every machine, unlike the time. */
  work = 0;
  private readonly job: SheetJob;
  private readonly bound: number;
  private readonly random: () => number;
  private readonly areas: readonly number[];
  private readonly unitArea: number;
  private readonly history = new Float64Array(HISTORY);
  private current: OpenSheet[] = [];
  private outside: number[] = [];
  private value = 0;
  private steps = 0;

  constructor(job: SheetJob, start: readonly OpenSheet[], bound: number, seed: number) {
    this.job = job;
    this.bound = bound;
    this.random = repeatableRandom(seed);
    this.areas = job.pieces.map((piece) => piece.length * piece.width);
    this.unitArea = Math.max(...job.stocks.map((stock) => stock.length * stock.width));
    this.best = start;
    this.bestCost = costOf(job, start);
    this.lowerGoal();
  }

  /** True when the plan costs no more than the bound. */
  get done(): boolean {
    return this.bestCost <= this.bound;
  }

  /** Works for so many steps, until done, or until so much work in all. */
  run(steps: number, mostWork = Number.POSITIVE_INFINITY): void {
    for (let step = 0; step < steps && !this.done && this.work < mostWork; step++) this.step();
  }

  private step(): void {
    const sheets = this.current.slice();
    const pool = this.outside.slice();
    const own = new Set<OpenSheet>();
    this.ruin(sheets, pool, own);
    for (const { nodes } of own) this.work += pool.length * nodes.length;
    const outside = this.recreate(sheets, pool, own);
    if (outside.length === 0) {
      this.best = sheets;
      this.bestCost = costOf(this.job, sheets);
      this.lowerGoal();
      return;
    }
    const value = this.valueOf(sheets, outside);
    const slot = this.steps++ % HISTORY;
    if (value <= (this.history[slot] as number) || value <= this.value) {
      this.current = sheets;
      this.outside = outside;
      this.value = value;
    }
    if (this.value < (this.history[slot] as number)) this.history[slot] = this.value;
  }

  /** Starts from the best plan without its emptiest sheets, so that what is left costs less than the best. */
  private lowerGoal(): void {
    const byFill = this.best.slice().sort((left, right) => this.fill(right) - this.fill(left));
    let spent = this.bestCost;
    this.outside = [];
    while (spent >= this.bestCost && byFill.length > 0) {
      const index = byFill.findLastIndex((sheet) => stockOf(this.job, sheet.stock).cost > 0);
      if (index < 0) break;
      const [sheet] = byFill.splice(index, 1) as [OpenSheet];
      spent -= stockOf(this.job, sheet.stock).cost;
      for (const node of sheet.nodes) if (node.axis === LEAF) this.outside.push(node.piece);
    }
    this.current = byFill;
    this.value = this.valueOf(this.current, this.outside);
    this.history.fill(this.value);
  }

  private ruin(sheets: OpenSheet[], pool: number[], own: Set<OpenSheet>): void {
    if (sheets.length === 0) return;
    const total = 1 + this.below(2 * MEAN_REMOVED - 1);
    const touched = 1 + this.below(MOST_TOUCHED);
    let removed = 0;
    for (let touch = 1; touch <= touched && removed < total; touch++) {
      const index = this.emptierOfTwo(sheets);
      const sheet = sheets[index] as OpenSheet;
      const want = touch === touched ? total - removed : 1 + this.below(total - removed);
      const dropped = new Set<SliceNode>();
      let got = 0;
      for (let tries = 0; got < want && tries < 4 && sheet.nodes.length > 0; tries++) {
        const node = sheet.nodes[this.below(sheet.nodes.length)] as SliceNode;
        if (!isInside(node, dropped)) {
          got += collect(node, dropped, pool);
          dropped.add(node);
        }
      }
      removed += got;
      const copy = sheet.without(dropped);
      own.add(copy);
      sheets[index] = copy;
    }
    for (let index = sheets.length - 1; index >= 0; index--)
      if ((sheets[index] as OpenSheet).root === null) sheets.splice(index, 1);
  }

  /** Puts pieces back one by one, each in its best place; returns those that stay outside. Sheets of others are copied first. */
  private recreate(sheets: OpenSheet[], pool: readonly number[], own: Set<OpenSheet>): number[] {
    const outside: number[] = [];
    let spent = costOf(this.job, sheets);
    let toLay = pool.length;
    for (const piece of this.shuffledBySize(pool)) {
      toLay--;
      let best = -1;
      let bestCost = Number.POSITIVE_INFINITY;
      for (let index = 0; index < sheets.length; index++) {
        const cost = (sheets[index] as OpenSheet).costOf(piece);
        if (cost < bestCost && this.random() >= BLINK) {
          best = index;
          bestCost = cost;
        }
      }
      if (best >= 0) {
        let sheet = sheets[best] as OpenSheet;
        if (!own.has(sheet)) {
          sheet = sheet.without(NONE);
          own.add(sheet);
          sheets[best] = sheet;
        }
        sheet.insert(piece, false);
        // What comes after looks for its place on this sheet anew.
        this.work += (1 + toLay) * sheet.nodes.length;
        continue;
      }
      const opened = this.open(sheets, piece, this.bestCost - spent);
      if (opened === null) outside.push(piece);
      else {
        own.add(opened);
        sheets.push(opened);
        spent += stockOf(this.job, opened.stock).cost;
      }
    }
    return outside;
  }

  /** A new sheet with the piece, below the price limit; among several stocks, any. */
  private open(sheets: readonly OpenSheet[], piece: number, priceLimit: number): OpenSheet | null {
    let chosen: OpenSheet | null = null;
    let seen = 0;
    for (let stock = 0; stock < this.job.stocks.length; stock++) {
      const { cost, limit } = stockOf(this.job, stock);
      if (cost >= priceLimit) continue;
      if (Number.isFinite(limit) && sheets.filter((sheet) => sheet.stock === stock).length >= limit) continue;
      const empty = new OpenSheet(this.job, stock, null);
      if (empty.costOf(piece) === Number.POSITIVE_INFINITY) continue;
      seen++;
      if (this.below(seen) === 0) chosen = empty;
    }
    chosen?.insert(piece, this.random() < 0.5);
    return chosen;
  }

  private shuffledBySize(pool: readonly number[]): number[] {
    const mode = this.random();
    const keyed = pool.map((index) => {
      const piece = this.job.pieces[index] as JobPiece;
      let size = 1;
      if (mode < 0.6) size = this.areas[index] as number;
      else if (mode < 0.8) size = Math.max(piece.length, piece.width);
      else if (mode < 0.9) size = Math.min(piece.length, piece.width);
      return { index, size: size * (1 + ORDER_NOISE * (this.random() - 0.5)) };
    });
    keyed.sort((left, right) => right.size - left.size);
    return keyed.map(({ index }) => index);
  }

  /** Area left outside, less a little for room gathered in few sheets. */
  private valueOf(sheets: readonly OpenSheet[], outside: readonly number[]): number {
    let value = 0;
    for (const piece of outside) value += (this.areas[piece] as number) / this.unitArea;
    for (const sheet of sheets) {
      const empty = 1 - this.fill(sheet);
      value -= EMPTINESS_WEIGHT * empty * empty;
    }
    return value;
  }

  private fill(sheet: OpenSheet): number {
    const { length, width } = stockOf(this.job, sheet.stock);
    return sheet.usedArea / (length * width);
  }

  /** Any sheet, the emptier of two drawn: there is more to win. */
  private emptierOfTwo(sheets: readonly OpenSheet[]): number {
    const first = this.below(sheets.length);
    const second = this.below(sheets.length);
    return this.fill(sheets[second] as OpenSheet) < this.fill(sheets[first] as OpenSheet) ? second : first;
  }

  private below(count: number): number {
    return Math.floor(this.random() * count);
  }
}

/** What the sheets cost together, in the job's unit. */
export function costOf(job: SheetJob, sheets: readonly OpenSheet[]): number {
  let cost = 0;
  for (const sheet of sheets) cost += stockOf(job, sheet.stock).cost;
  return cost;
}

function stockOf(job: SheetJob, stock: number): JobStock {
  return job.stocks[stock] as JobStock;
}

function isInside(node: SliceNode, dropped: ReadonlySet<SliceNode>): boolean {
  for (let up: SliceNode | null = node; up !== null; up = up.up) if (dropped.has(up)) return true;
  return false;
}

/** Adds the pieces below the node that are not dropped yet to the pool; returns how many. */
function collect(node: SliceNode, dropped: ReadonlySet<SliceNode>, pool: number[]): number {
  if (dropped.has(node)) return 0;
  if (node.axis === LEAF) {
    pool.push(node.piece);
    return 1;
  }
  let count = 0;
  for (const kid of node.kids) count += collect(kid, dropped, pool);
  return count;
}
