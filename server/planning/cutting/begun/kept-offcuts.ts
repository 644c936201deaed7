import type { CutNode, MaterialPlan, StockLayout } from '../../plan-output.ts';

export interface KeptOffcut {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** So many of this size on each of the equal sheets. */
  readonly count: number;
}

/** Pieces with a side shorter than this are waste and not offered for keeping, mm. Ours, no source. */
export const LEAST_OFFERED_MM = 50;

/**
 * The offcuts of a layout that are worth keeping.
 *
 * `layout`: mm. `kind`: of a board only the length counts. Result: sizes with their number on one sheet, largest first.
 * Rule of ours, no source.
 */
export function keptOffcuts(
  layout: Pick<StockLayout, 'cut'>,
  kind: MaterialPlan['kind'],
): readonly KeptOffcut[] {
  const bySize = new Map<string, KeptOffcut>();
  const visit = (node: CutNode): void => {
    if (node.type === 'split') node.children.forEach(visit);
    if (node.type !== 'offcut') return;
    const { lengthMm, widthMm } = node;
    if (lengthMm < LEAST_OFFERED_MM || (kind === 'sheet' && widthMm < LEAST_OFFERED_MM)) return;
    const key = `${lengthMm.toFixed(2)} ${widthMm.toFixed(2)}`;
    bySize.set(key, { lengthMm, widthMm, count: (bySize.get(key)?.count ?? 0) + 1 });
  };
  visit(layout.cut);
  return [...bySize.values()].sort((a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm);
}
