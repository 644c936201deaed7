import type { FoundCut, FoundSheet } from '../../project-input.ts';
import type { JobPiece, JobStock } from '../sheet-2d/sheet-job.ts';
import type { CuttingQuestion } from './cutting-question.ts';

/** Trees deeper than this are no cutting plan of ours: a tree of n pieces has fewer levels than pieces. */
const MOST_LEVELS = 1000;

/**
 * What is wrong with a cutting plan that was found earlier, or null when it can be cut.
 *
 * `question`: what was asked. `sheets`: the plan. Result: the first fault in words. Checked apart from the search that
 * made it, from the leaves up: every piece is cut as often as it is asked for, is turned only where it may be, the
 * pieces of a sheet with their kerfs are no larger than its stock, and no stock is used more often than there is.
 * Guillotine cuts only, by the form of the tree. Exact: whole numbers. No source: the rules of the question.
 */
export function foundFault(question: CuttingQuestion, sheets: readonly FoundSheet[]): string | null {
  const { pieces, stocks, stages = Infinity } = question.job;
  const made = pieces.map(() => 0);
  const used = stocks.map(() => 0);
  for (const { stock, count, cut } of sheets) {
    const from = stocks[stock];
    if (from === undefined) return `there is no stock ${stock}`;
    if (!(Number.isInteger(count) && count > 0)) return `a sheet is cut ${count} times`;
    used[stock] = (used[stock] as number) + count;
    const cutOnce = pieces.map(() => 0);
    const size = sizeOf(cut, pieces, cutOnce, 0);
    if (typeof size === 'string') return size;
    if (stages < Infinity && stagesOf(cut, pieces) > stages)
      return 'a sheet takes more stages of cuts than there may be';
    if (!(size.length <= from.length && size.width <= from.width))
      return 'the pieces of a sheet do not fit on it';
    for (const [piece, times] of cutOnce.entries()) made[piece] = (made[piece] as number) + times * count;
  }
  for (const [piece, { count }] of pieces.entries())
    if (made[piece] !== count) return `piece ${piece} is cut ${made[piece]} times, not ${count}`;
  for (const [stock, { limit }] of stocks.entries())
    if ((used[stock] as number) > limit) return `stock ${stock} is used ${used[stock]} times of ${limit}`;
  return null;
}

/** The size of what is cut, kerf in; counts the pieces on the way. A text is a fault. */
function sizeOf(
  cut: FoundCut,
  pieces: readonly JobPiece[],
  counts: number[],
  level: number,
): Pick<JobStock, 'length' | 'width'> | string {
  if (level > MOST_LEVELS) return 'the cuts are nested too deep';
  if ('piece' in cut) {
    const piece = pieces[cut.piece];
    if (piece === undefined) return `there is no piece ${cut.piece}`;
    if (cut.turned && !piece.turnable) return `piece ${cut.piece} is turned and may not be`;
    counts[cut.piece] = (counts[cut.piece] as number) + 1;
    return cut.turned ? { length: piece.width, width: piece.length } : piece;
  }
  if (cut.cuts.length === 0) return 'a cut makes nothing';
  if (cut.along !== 'length' && cut.along !== 'width') return 'a cut has no direction';
  let along = 0;
  let across = 0;
  for (const child of cut.cuts) {
    const size = sizeOf(child, pieces, counts, level + 1);
    if (typeof size === 'string') return size;
    along += cut.along === 'length' ? size.length : size.width;
    across = Math.max(across, cut.along === 'length' ? size.width : size.length);
  }
  return cut.along === 'length' ? { length: along, width: across } : { length: across, width: along };
}

/** Stages of cuts, one direction each; a piece of several parts takes one more, and is trimmed first where they lie as its neighbours do. */
function stagesOf(cut: FoundCut, pieces: readonly JobPiece[]): number {
  if ('piece' in cut) return pieces[cut.piece]?.inner === undefined ? 0 : 1;
  let most = 0;
  for (const child of cut.cuts) {
    const own = stagesOf(child, pieces);
    const inner = 'piece' in child ? pieces[child.piece]?.inner : child.along;
    // Cuts of a cut in the same direction are of the same stage.
    const more = 'piece' in child ? Number(inner === cut.along) : -Number(inner === cut.along);
    most = Math.max(most, own + more);
  }
  return most + 1;
}
