import { requireNumber } from './require-number.ts';

/**
 * How many discs, sheets or pads does one pass over an area wear out?
 *
 * @param areaM2 area to sand or wipe, m2, 0 or more
 * @param areaPerPieceM2 area one piece serves before it is spent, m2, above 0
 * @returns pieces, not rounded: rounding up happens once, when packs are chosen
 *
 * Source: definition of the catalogue's area per piece. Valid for any area. Departures: none.
 * Example: 6 m2 at 1.5 m2 a disc: 4 discs.
 */
export function piecesForArea({
  areaM2,
  areaPerPieceM2,
}: {
  readonly areaM2: number;
  readonly areaPerPieceM2: number;
}): number {
  requireNumber('piecesForArea: areaM2', areaM2, { atLeast: 0 }, 'm2');
  requireNumber('piecesForArea: areaPerPieceM2', areaPerPieceM2, { above: 0 }, 'm2');
  return areaM2 / areaPerPieceM2;
}
