import type { FoundSheet } from '../../project-input.ts';
import type { CuttingQuestion } from '../found/cutting-question.ts';
import { BarsAnytime } from './bars-anytime.ts';
import { SheetsAnytime } from './sheets-anytime.ts';

/** The best plan so far of a search that can be stopped at any time. */
export interface AnytimePlan {
  readonly sheets: readonly FoundSheet[];
  readonly cost: number;
  /** No plan costs less. */
  readonly boundCost: number;
  /** No plan buys fewer sheets or boards. */
  readonly boundStocks: number;
  /** Largest offcut worth keeping, mm2. */
  readonly offcutMm2: number;
}

export interface CuttingSearch {
  readonly plan: AnytimePlan;
  /** The plan costs no more than the bound. */
  readonly proven: boolean;
  /** Works for so many steps of a few milliseconds; false when there is nothing left to try. */
  run(steps: number): boolean;
}

/**
 * A search for the best answer to a cutting question: least cost, then the largest offcut in one piece.
 *
 * `question`: see CuttingQuestion. `start`: a plan without fault to begin from, or null. `seed`: any whole number; another
 * one searches elsewhere. Result: a search whose time is the caller's. Same question, start, seed and steps, same plan.
 */
export function cuttingSearch(
  question: CuttingQuestion,
  start: readonly FoundSheet[] | null,
  seed: number,
): CuttingSearch {
  return question.toLengthOnly ? new BarsAnytime(question, start) : new SheetsAnytime(question, start, seed);
}
