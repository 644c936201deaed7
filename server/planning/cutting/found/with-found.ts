import type { FoundLayout, FoundSheet } from '../../project-input.ts';
import type { LaidBlanks } from '../laid-blanks.ts';
import { largestOffcutMm2 } from '../largest-offcut.ts';
import type { MaterialJob } from '../material-job.ts';
import type { SheetJob } from '../sheet-2d/sheet-job.ts';
import { askedQuestion } from './cutting-question.ts';
import { foundFault } from './found-fault.ts';
import { foundLayouts } from './found-layouts.ts';

/**
 * The better of a plan just made and one found earlier for the same question.
 *
 * `laid`: the plan just made. `job`: what it was made for. `kerfMm`: mm. `found`: plans found earlier, for any questions.
 * Result: the found plan where it costs less, or as much and leaves a larger offcut in one piece; with the better of
 * both bounds. A found plan that answers another question, cannot be cut, or claims a bound above the cost of a plan
 * that is there, is left alone. Rule of ours, no source.
 */
export function withFound(
  laid: LaidBlanks,
  job: MaterialJob,
  kerfMm: number,
  found: readonly FoundLayout[] | undefined,
): LaidBlanks {
  if (found === undefined || found.length === 0 || job.blanks.length === 0) return laid;
  const asked = askedQuestion(job, kerfMm);
  const answer = found.find(({ question }) => question === asked.question.hash);
  if (answer === undefined || foundFault(asked.question, answer.sheets) !== null) return laid;
  const cost = foundCost(asked.question.job, answer.sheets);
  if (!(answer.boundCost <= Math.min(cost, laid.cost))) return laid;
  const fewest = Math.min(boughtOf(asked.question.job, answer.sheets), boughtIn(laid.layouts));
  if (!(answer.boundStocks <= fewest)) return laid;
  const better = {
    ...laid,
    boundCost: Math.max(laid.boundCost, answer.boundCost),
    boundStocks: Math.max(laid.boundStocks, answer.boundStocks),
    boundRaised: answer.boundCost > laid.boundCost || answer.boundStocks > laid.boundStocks,
  };
  if (cost > laid.cost) return better;
  const layouts = foundLayouts(asked, answer.sheets);
  if (cost === laid.cost && largestOffcutMm2(layouts) <= largestOffcutMm2(laid.layouts)) return better;
  return { ...better, layouts, cost };
}

/**
 * How many stocks a found plan buys.
 *
 * `job`: of the question. `sheets`: the plan. Result: those of which there is no limit. Exact.
 */
export function boughtOf(job: SheetJob, sheets: readonly FoundSheet[]): number {
  return sheets.reduce(
    (sum, { stock, count }) => sum + (job.stocks[stock]?.limit === Infinity ? count : 0),
    0,
  );
}

function boughtIn(layouts: LaidBlanks['layouts']): number {
  return layouts.reduce((sum, { packId, count }) => sum + (packId === null ? 0 : count), 0);
}

/**
 * What a found plan costs, in the unit of the question's costs.
 *
 * `job`: of the question. `sheets`: the plan. Result: sum of count x cost. Exact.
 */
export function foundCost(job: SheetJob, sheets: readonly FoundSheet[]): number {
  return sheets.reduce((sum, { stock, count }) => sum + count * (job.stocks[stock]?.cost ?? 0), 0);
}
