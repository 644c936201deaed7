import type { SheetPiece } from '../../drawing/sheet-pieces.ts';

export interface Offcut {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly count: number;
}

/** Pieces with a side shorter than this are waste and not offered for keeping, mm. Ours, no source. */
export const LEAST_KEPT_MM = 50;

/** The offcuts of a layout that are worth keeping, equal ones counted over all its sheets, largest first. */
export function offcutsOf(
  pieces: readonly SheetPiece[],
  kind: 'sheet' | 'board',
  sheets: number,
): readonly Offcut[] {
  const bySize = new Map<string, Offcut>();
  for (const { type, lengthMm, widthMm } of pieces) {
    if (type !== 'offcut' || lengthMm < LEAST_KEPT_MM || (kind === 'sheet' && widthMm < LEAST_KEPT_MM))
      continue;
    const key = `${lengthMm.toFixed(2)} ${widthMm.toFixed(2)}`;
    const known = bySize.get(key);
    bySize.set(key, { lengthMm, widthMm, count: (known?.count ?? 0) + sheets });
  }
  return [...bySize.values()].sort((a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm);
}
