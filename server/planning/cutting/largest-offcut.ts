import type { CutNode, StockLayout } from '../plan-output.ts';

/** An offcut narrower than this is not kept for another job, mm. Ours, no source. */
export const LEAST_KEPT_MM = 100;

/**
 * The largest single offcut of a cutting plan that is worth keeping.
 *
 * `layouts`: mm. Result: mm2 of the largest rectangle whose shorter side is at least LEAST_KEPT_MM, or the width of a
 * board that is narrower; 0 when there is none.
 * Rule of ours: of two plans of one cost, the one that leaves more in one piece is better.
 * Example: a 2400 x 300 mm and a 1000 x 90 mm offcut: 720 000 mm2.
 */
export function largestOffcutMm2(layouts: readonly Pick<StockLayout, 'cut' | 'widthMm'>[]): number {
  let largest = 0;
  for (const { cut, widthMm } of layouts)
    largest = Math.max(largest, largestIn(cut, Math.min(LEAST_KEPT_MM, widthMm)));
  return largest;
}

function largestIn(node: CutNode, leastMm: number): number {
  if (node.type === 'split')
    return node.children.reduce((largest, child) => Math.max(largest, largestIn(child, leastMm)), 0);
  const { lengthMm, widthMm } = node;
  return node.type === 'offcut' && Math.min(lengthMm, widthMm) >= leastMm ? lengthMm * widthMm : 0;
}
