/**
 * How long each piece may be when a stock is cut into equal pieces.
 *
 * `stockMm`: length of the stock, mm. `pieces`: how many. `kerfMm`: width of the saw cut, mm.
 * Result: mm; the stock less one kerf between neighbours, shared equally. Exact: arithmetic, no source needed.
 * Valid range: stock above 0; a whole number of pieces from 1 up; kerf 0 or more; what is left above 0.
 * Example: equalPieceLength(2400, 4, 3) is 597.75.
 */
export function equalPieceLength(stockMm: number, pieces: number, kerfMm: number): number {
  if (!(stockMm > 0 && Number.isFinite(stockMm)))
    throw new RangeError(`equalPieceLength: stockMm must be above 0 mm, got ${stockMm}`);
  if (!(Number.isInteger(pieces) && pieces >= 1))
    throw new RangeError(`equalPieceLength: pieces must be a whole number from 1, got ${pieces}`);
  if (!(kerfMm >= 0 && kerfMm * (pieces - 1) < stockMm))
    throw new RangeError(`equalPieceLength: kerfMm must be 0 or more and leave something, got ${kerfMm}`);
  return (stockMm - kerfMm * (pieces - 1)) / pieces;
}
