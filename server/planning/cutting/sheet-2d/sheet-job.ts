/**
 * One sheet-cutting job in whole grid units, kerf already in: every piece and every stock is one kerf longer and
 * wider than it is, so that pieces simply lie side by side. "Length" runs along the stock's length.
 */
export interface SheetJob {
  readonly stocks: readonly JobStock[];
  readonly pieces: readonly JobPiece[];
  /** At most so many stages of cuts, trimming a piece not counted; left out: any number. */
  readonly stages?: number;
}

export interface JobStock {
  readonly length: number;
  readonly width: number;
  /** What one costs, 0 or more, in one unit for all stocks. */
  readonly cost: number;
  /** How many there are; Infinity for stock to buy. */
  readonly limit: number;
}

export interface JobPiece {
  readonly length: number;
  readonly width: number;
  readonly count: number;
  /** May also be laid with its length along the stock's width. */
  readonly turnable: boolean;
  /** Cut into several parts that lie side by side along the stock's length or width; left out: one part. */
  readonly inner?: 'length' | 'width';
}
