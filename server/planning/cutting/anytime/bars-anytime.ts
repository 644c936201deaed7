import type { FoundSheet } from '../../project-input.ts';
import type { CuttingQuestion } from '../found/cutting-question.ts';
import { barJobOf, foundOfBars } from '../found/found-bars.ts';
import { foundCost } from '../found/with-found.ts';
import { barBound } from '../stock-1d/bar-bound.ts';
import { BarSearch } from '../stock-1d/bar-search.ts';
import { BAR_OFFCUT_STEPS } from './constants.ts';
import type { AnytimePlan, CuttingSearch } from './cutting-search.ts';
import { offcutAims } from './offcut-aims.ts';
import { offcutOf } from './offcut-of.ts';

/**
 * The long search for boards cut to length: the pattern search until it meets its bound, then a longer offcut.
 *
 * The offcut is searched for as SheetsAnytime does. Source of the search and of the bound: see BarSearch.
 */
export class BarsAnytime implements CuttingSearch {
  private readonly question: CuttingQuestion;
  private readonly work: Generator<void, void, void>;
  private readonly fewest: number;
  private boundCost = 0;
  private sheets: readonly FoundSheet[];
  private cost: number;
  private offcutMm2: number;

  constructor(question: CuttingQuestion, start: readonly FoundSheet[] | null) {
    this.question = question;
    const job = barJobOf(question);
    this.fewest = barBound(job).stocks;
    const search = new BarSearch(job);
    const first = foundOfBars(search.best, question);
    const startCost = start === null ? Number.POSITIVE_INFINITY : foundCost(question.job, start);
    this.sheets = start !== null && startCost <= search.bestCost ? start : first;
    this.cost = Math.min(startCost, search.bestCost);
    this.boundCost = search.bound;
    this.offcutMm2 = offcutOf(question, this.sheets);
    this.work = this.search(search);
  }

  get plan(): AnytimePlan {
    const { sheets, cost, boundCost, offcutMm2 } = this;
    return { sheets, cost, boundCost, boundStocks: this.boundStocks, offcutMm2 };
  }

  get proven(): boolean {
    return this.cost <= this.boundCost;
  }

  run(steps: number): boolean {
    for (let step = 0; step < steps; step++) if (this.work.next().done === true) return false;
    return true;
  }

  /** With one stock to buy the bound on the cost is one on the number, too. */
  private get boundStocks(): number {
    const bought = this.question.job.stocks.filter(({ limit }) => limit === Infinity);
    const [only] = bought;
    const byCost =
      bought.length === 1 && only !== undefined && only.cost > 0 ? this.boundCost / only.cost : 0;
    return Math.max(this.fewest, Math.round(byCost));
  }

  private *search(search: BarSearch): Generator<void, void, void> {
    for (let more = true; more && !this.proven; ) {
      more = search.run(1);
      this.boundCost = Math.max(this.boundCost, search.bound);
      if (search.bestCost < this.cost) this.take(foundOfBars(search.best, this.question));
      yield;
    }
    while (yield* this.roomier());
  }

  /** The boldest aim that is reached, if any is. */
  private *roomier(): Generator<void, boolean, void> {
    for (const { job, stock, spare } of offcutAims(this.question, this.sheets, this.offcutMm2)) {
      // Whole numbers give the best bound: twice the cost, so that half a unit is one.
      const doubled = { ...job, stocks: job.stocks.map((each) => ({ ...each, cost: 2 * each.cost })) };
      const search = new BarSearch(barJobOf({ ...this.question, job: doubled }));
      for (let step = 0; step < BAR_OFFCUT_STEPS && search.bestCost >= 2 * this.cost; step++) {
        if (search.bound >= 2 * this.cost || !search.run(1)) break;
        yield;
      }
      if (search.bestCost >= 2 * this.cost) continue;
      const sheets = foundOfBars(search.best, this.question).map((sheet) =>
        sheet.stock === spare ? { ...sheet, stock } : sheet,
      );
      const offcutMm2 = offcutOf(this.question, sheets);
      const cost = foundCost(this.question.job, sheets);
      if (cost > this.cost || (cost === this.cost && offcutMm2 <= this.offcutMm2)) continue;
      this.take(sheets);
      return true;
    }
    return false;
  }

  private take(sheets: readonly FoundSheet[]): void {
    this.sheets = sheets;
    this.cost = foundCost(this.question.job, sheets);
    this.offcutMm2 = offcutOf(this.question, sheets);
  }
}
