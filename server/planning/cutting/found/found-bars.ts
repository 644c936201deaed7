import type { FoundCut, FoundSheet } from '../../project-input.ts';
import type { BarJob, BarPattern } from '../stock-1d/bar-job.ts';
import type { CuttingQuestion } from './cutting-question.ts';

/**
 * A question about boards cut to length as a job of the pattern search: widths play no part.
 *
 * Result: pieces and stocks under the same numbers, grid units. No source: a definition.
 */
export function barJobOf({ job }: CuttingQuestion): BarJob {
  return {
    stocks: job.stocks.map(({ length, cost, limit }) => ({ length, cost, limit })),
    pieces: job.pieces.map(({ length, count }) => ({ length, count })),
  };
}

/**
 * The patterns of a search as plain data, longest pieces first.
 *
 * `patterns`: of the question's bar job. Result: a found plan. No source: another form of the same.
 */
export function foundOfBars(patterns: readonly BarPattern[], { job }: CuttingQuestion): FoundSheet[] {
  return patterns.map(({ stock, cuts, times }) => {
    const pieces = cuts.flatMap(({ piece, count }) => Array<number>(count).fill(piece));
    pieces.sort((a, b) => (job.pieces[b]?.length ?? 0) - (job.pieces[a]?.length ?? 0) || a - b);
    const leaves = pieces.map((piece): FoundCut => ({ piece, turned: false }));
    const [only] = leaves;
    const cut: FoundCut =
      leaves.length === 1 && only !== undefined ? only : { along: 'length', cuts: leaves };
    return { stock, count: times, cut };
  });
}
