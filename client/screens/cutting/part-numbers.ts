import type { SheetPiece } from '../../drawing/sheet-pieces.ts';

export interface NumberedPart {
  readonly partId: string;
  readonly number: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly count: number;
}

/** The different parts of one layout, numbered in the order they lie, with how often each is cut from it. */
export function partNumbers(pieces: readonly SheetPiece[]): readonly NumberedPart[] {
  const parts = new Map<string, NumberedPart>();
  for (const { partId, turned, lengthMm, widthMm } of pieces) {
    if (partId === null) continue;
    const known = parts.get(partId);
    // A turned part lies with its width along the sheet; its size is named as it will be used.
    const [length, width] = turned ? [widthMm, lengthMm] : [lengthMm, widthMm];
    parts.set(
      partId,
      known === undefined
        ? { partId, number: parts.size + 1, lengthMm: length, widthMm: width, count: 1 }
        : { ...known, count: known.count + 1 },
    );
  }
  return [...parts.values()];
}
