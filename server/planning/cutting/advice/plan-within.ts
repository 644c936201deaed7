import type { FoundSheet } from '../../project-input.ts';
import { BOUND_EFFORT } from '../constants.ts';
import type { CuttingQuestion } from '../found/cutting-question.ts';
import { barJobOf, foundOfBars } from '../found/found-bars.ts';
import { foundFault } from '../found/found-fault.ts';
import { foundOfSheets } from '../found/found-sheets.ts';
import { SheetSearch } from '../sheet-2d/sheet-search.ts';
import { sheetsBound } from '../sheet-2d/sheets-bound.ts';
import { startSheets } from '../sheet-2d/start-sheets.ts';
import { BarSearch } from '../stock-1d/bar-search.ts';

export interface PlanWanted {
  /** Only plans that cost less are of use, in the question's unit; Infinity for any. */
  readonly below: number;
  /** A plan that costs no more is good enough. */
  readonly enough: number;
  /** Of the sheet search, and of the pattern search for boards. */
  readonly sheetSteps: number;
  readonly barSteps: number;
}

/**
 * A plan that costs less than something, by a short search.
 *
 * `question`: every piece fits a stock without limit. `wanted`: see PlanWanted. Result: a plan that has been checked piece by
 * piece; null when none was found; 'impossible' when the bound rules it out whatever the effort. No source of its own:
 * see SheetSearch, BarSearch and sheetsBound.
 */
export function planWithin(
  question: CuttingQuestion,
  wanted: PlanWanted,
): readonly FoundSheet[] | 'impossible' | null {
  const sheets = question.toLengthOnly ? barsWithin(question, wanted) : sheetsWithin(question, wanted);
  if (sheets === null || sheets === 'impossible') return sheets;
  return foundFault(question, sheets) === null ? sheets : null;
}

function sheetsWithin(
  { job }: CuttingQuestion,
  { below, enough, sheetSteps }: PlanWanted,
): readonly FoundSheet[] | 'impossible' | null {
  const bound = sheetsBound(job, BOUND_EFFORT);
  if (bound.cost >= below) return 'impossible';
  const search = new SheetSearch(job, startSheets(job), Math.max(bound.cost, enough), 1);
  search.run(sheetSteps);
  return search.bestCost < below ? foundOfSheets(search.best) : null;
}

function barsWithin(
  question: CuttingQuestion,
  { below, enough, barSteps }: PlanWanted,
): readonly FoundSheet[] | 'impossible' | null {
  const search = new BarSearch(barJobOf(question));
  for (let step = 0; step < barSteps && search.bestCost > enough; step++) {
    if (search.bound >= below) return 'impossible';
    if (!search.run(1)) break;
  }
  return search.bestCost < below ? foundOfBars(search.best, question) : null;
}
