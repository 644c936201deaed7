import { FIT_TOLERANCE_MM, GRID_PER_MM } from '../constants.ts';
import type { AskedQuestion, CuttingQuestion } from './cutting-question.ts';

/**
 * A question with made-up rows and offers behind it: one of each, called by their numbers. For drawing plans of a
 * question where its part list is not at hand.
 *
 * `question`: see CuttingQuestion. Result: sizes in mm, as exact as the grid. No source: the reverse of askedQuestion.
 */
export function unnamedQuestion(question: CuttingQuestion): AskedQuestion {
  const inMm = (grid: number): number => grid / GRID_PER_MM - question.kerfMm;
  return {
    question,
    owners: question.job.pieces.map(({ length, width, count, turnable }, piece) => [
      {
        partId: String(piece),
        name: `piece ${piece}`,
        lengthMm: inMm(length),
        widthMm: inMm(width),
        count,
        grain: turnable ? 'free' : 'along',
      },
    ]),
    offers: question.job.stocks.map(({ length, width, cost, limit }, stock) => [
      {
        packId: limit === Infinity ? String(stock) : null,
        onHandId: limit === Infinity ? null : String(stock),
        label: `stock ${stock}`,
        lengthMm: inMm(length) - FIT_TOLERANCE_MM,
        widthMm: inMm(width) - FIT_TOLERANCE_MM,
        trimMm: 0,
        priceMinor: cost,
        limit,
      },
    ]),
  };
}
