import type { FoundSheet } from '../../project-input.ts';
import type { CuttingQuestion } from '../found/cutting-question.ts';
import { foundFault } from '../found/found-fault.ts';
import { foundOfSheets } from '../found/found-sheets.ts';
import { treeOf } from '../found/found-tree.ts';
import { foundCost } from '../found/with-found.ts';
import type { CutBound } from '../least-cover.ts';
import { OpenSheet } from '../sheet-2d/open-sheet.ts';
import type { SheetJob } from '../sheet-2d/sheet-job.ts';
import { SheetSearch } from '../sheet-2d/sheet-search.ts';
import { sheetsBound } from '../sheet-2d/sheets-bound.ts';
import { startSheets } from '../sheet-2d/start-sheets.ts';
import {
  FIRST_ROUND_STEPS,
  LONG_BOUND_EFFORT,
  LONGEST_ROUND_STEPS,
  OFFCUT_STEPS,
  OFFCUT_SWEEPS,
  STEPS_AT_ONCE,
} from './constants.ts';
import type { AnytimePlan, CuttingSearch } from './cutting-search.ts';
import { exactSheets } from './exact-sheets.ts';
import { offcutAims } from './offcut-aims.ts';
import { offcutOf } from './offcut-of.ts';

/**
 * The long search for sheets: rounds of ruin and recreate for less cost, and between them sweeps for a larger offcut.
 *
 * An offcut is searched for as if it were money: a stock smaller by the offcut wanted is offered once, half a unit
 * cheaper than the whole, so that a plan one half cheaper is a plan that leaves it.
 * Small jobs are tried out in full. Source of the search: see SheetSearch; of the bounds: see sheetsBound, exactSheets. The offcut is an idea of ours.
 */
export class SheetsAnytime implements CuttingSearch {
  private readonly question: CuttingQuestion;
  private readonly job: SheetJob;
  private readonly seed: number;
  private readonly work: Generator<void, void, void>;
  private bound: CutBound = { cost: 0, stocks: 0 };
  private sheets: readonly FoundSheet[];
  private cost: number;
  private offcutMm2: number;
  private attempts = 0;

  constructor(question: CuttingQuestion, start: readonly FoundSheet[] | null, seed: number) {
    this.question = question;
    this.job = question.job;
    this.seed = seed;
    this.sheets = start ?? foundOfSheets(startSheets(this.job));
    this.cost = foundCost(this.job, this.sheets);
    this.offcutMm2 = offcutOf(question, this.sheets);
    this.work = this.search();
  }

  get plan(): AnytimePlan {
    const { sheets, cost, bound, offcutMm2 } = this;
    return { sheets, cost, boundCost: bound.cost, boundStocks: bound.stocks, offcutMm2 };
  }

  get proven(): boolean {
    return this.cost <= this.bound.cost;
  }

  run(steps: number): boolean {
    for (let step = 0; step < steps; step++) if (this.work.next().done === true) return false;
    return true;
  }

  private *search(): Generator<void, void, void> {
    this.bound = sheetsBound(this.job, LONG_BOUND_EFFORT);
    yield;
    let failedSweeps = 0;
    for (let round = 0; !this.proven || failedSweeps < OFFCUT_SWEEPS; round++) {
      if (!this.proven && (yield* this.cheaper(round))) failedSweeps = 0;
      if (!this.proven && round === 0) yield* this.provenByTrying();
      if (failedSweeps < OFFCUT_SWEEPS) failedSweeps = (yield* this.roomier()) ? 0 : failedSweeps + 1;
    }
  }

  /** One round for less cost; true when it was reached. */
  private *cheaper(round: number): Generator<void, boolean, void> {
    const search = new SheetSearch(
      this.job,
      this.open(this.job, this.sheets),
      this.bound.cost,
      this.seed + round,
    );
    const steps = Math.min(LONGEST_ROUND_STEPS, FIRST_ROUND_STEPS * 2 ** Math.min(round, 20));
    let gained = false;
    for (let step = 0; step < steps && !this.proven; step += STEPS_AT_ONCE) {
      search.run(STEPS_AT_ONCE);
      if (search.bestCost < this.cost) {
        this.take(foundOfSheets(search.best));
        gained = true;
      }
      yield;
    }
    return gained;
  }

  /** Tries everything, where that is little enough: the plan is then the cheapest of all, and known to be. */
  private *provenByTrying(): Generator<void, void, void> {
    const exact = yield* exactSheets(this.job);
    if (exact === null) return;
    // With fewer stages of cuts the cheapest plan of all is only a bound.
    if (exact.cost < this.cost && foundFault(this.question, exact.sheets) === null) this.take(exact.sheets);
    const bought = this.job.stocks.filter(({ limit }) => limit === Infinity);
    const [only] = bought;
    const stocks = bought.length === 1 && only !== undefined && only.cost > 0 ? exact.cost / only.cost : 0;
    this.bound = { cost: exact.cost, stocks: Math.max(this.bound.stocks, Math.round(stocks)) };
  }

  /** One sweep for a larger offcut at the same cost; true when there was one. */
  private *roomier(): Generator<void, boolean, void> {
    let gained = false;
    for (let tried = 0; ; tried++) {
      const aim = offcutAims(this.question, this.sheets, this.offcutMm2)[tried];
      if (aim === undefined) return gained;
      const { job, stock, spare } = aim;
      const seed = this.seed + ++this.attempts;
      const search = new SheetSearch(job, this.open(job, this.sheets), this.cost - 0.5, seed);
      for (let step = 0; step < OFFCUT_STEPS && !search.done; step += STEPS_AT_ONCE) {
        search.run(STEPS_AT_ONCE);
        yield;
      }
      if (search.bestCost >= this.cost) continue;
      // The smaller stock is cut from the whole one.
      const sheets = foundOfSheets(search.best).map((sheet) =>
        sheet.stock === spare ? { ...sheet, stock } : sheet,
      );
      const offcutMm2 = offcutOf(this.question, sheets);
      if (
        foundCost(this.job, sheets) > this.cost ||
        (foundCost(this.job, sheets) === this.cost && offcutMm2 <= this.offcutMm2)
      )
        continue;
      this.take(sheets);
      gained = true;
      tried = -1;
    }
  }

  private take(sheets: readonly FoundSheet[]): void {
    this.sheets = sheets;
    this.cost = foundCost(this.job, sheets);
    this.offcutMm2 = offcutOf(this.question, sheets);
  }

  private open(job: SheetJob, sheets: readonly FoundSheet[]): OpenSheet[] {
    return sheets.flatMap(({ stock, count, cut }) =>
      Array.from({ length: count }, () => new OpenSheet(job, stock, treeOf(cut, this.job.pieces))),
    );
  }
}
