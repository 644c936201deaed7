import type { FoundLayout } from '../../project-input.ts';
import { MOST_PIECES_SEARCHED } from '../constants.ts';
import type { LaidBlanks } from '../laid-blanks.ts';
import type { MaterialJob } from '../material-job.ts';
import { askedQuestion } from './cutting-question.ts';
import { foundFault } from './found-fault.ts';
import { foundLayouts } from './found-layouts.ts';
import { boughtOf, foundCost } from './with-found.ts';

const MM2_PER_M2 = 1_000_000;

/**
 * A plan found earlier, taken without a new one being made: for long lists, where that takes an edit's time.
 *
 * `job`, `kerfMm` (mm): what is to be cut. `found`: plans found earlier, for any questions; a search begins with the
 * plan an edit gets, so what it has found is as good or better. Result: the found plan and its bounds; null for short
 * lists, and where none answers the question, or it cannot be cut or claims a bound above its own cost. Rule of ours.
 */
export function foundInstead(
  job: MaterialJob,
  kerfMm: number,
  found: readonly FoundLayout[] | undefined,
): LaidBlanks | null {
  const pieces = job.blanks.reduce((sum, { count }) => sum + count, 0);
  if (found === undefined || found.length === 0 || pieces <= MOST_PIECES_SEARCHED) return null;
  const asked = askedQuestion(job, kerfMm);
  const answer = found.find(({ question }) => question === asked.question.hash);
  if (answer === undefined || foundFault(asked.question, answer.sheets) !== null) return null;
  const { sheets, boundCost, boundStocks } = answer;
  const cost = foundCost(asked.question.job, sheets);
  if (!(boundCost <= cost && boundStocks <= boughtOf(asked.question.job, sheets))) return null;
  return {
    layouts: foundLayouts(asked, sheets),
    cost,
    boundCost,
    boundStocks,
    boundRaised: true,
    netM2:
      job.blanks.reduce((sum, blank) => sum + blank.lengthMm * blank.widthMm * blank.count, 0) / MM2_PER_M2,
  };
}
