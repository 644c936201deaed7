import type { FoundSheet } from '../../project-input.ts';
import type { CuttingQuestion } from '../found/cutting-question.ts';
import { foundLayouts } from '../found/found-layouts.ts';
import { unnamedQuestion } from '../found/unnamed-question.ts';
import { largestOffcutMm2 } from '../largest-offcut.ts';

/**
 * The largest offcut that a found plan leaves, as it will be drawn.
 *
 * `question`, `sheets`: a plan without fault. Result: mm2; see largestOffcutMm2. No source of its own.
 */
export function offcutOf(question: CuttingQuestion, sheets: readonly FoundSheet[]): number {
  // One of each kind of sheet shows all its offcuts.
  return largestOffcutMm2(
    foundLayouts(
      { ...unnamedQuestion(question), offers: unlimited(question) },
      sheets.map((sheet) => ({ ...sheet, count: 1 })),
    ),
  );
}

function unlimited(question: CuttingQuestion) {
  return unnamedQuestion(question).offers.map((some) => some.map((offer) => ({ ...offer, limit: Infinity })));
}
