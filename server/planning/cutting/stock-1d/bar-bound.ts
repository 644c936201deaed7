import { type SheetsBound, sheetsBound } from '../sheet-2d/sheets-bound.ts';
import type { BarJob } from './bar-job.ts';

/** Enough for every threshold of a workshop's list of lengths. */
const EFFORT = 400_000;

/**
 * How many bars, and how much money, every plan needs at least, without solving a linear programme.
 *
 * `job`: see bar-job.ts. Result: cost and count. Bars are sheets that are one unit wide.
 * Source: S. Martello and P. Toth, Knapsack Problems (1990), section 8.3 (bound L2), which the thresholds among the dual
 * feasible functions of sheetsBound contain.
 */
export function barBound(job: BarJob): SheetsBound {
  return sheetsBound(
    {
      stocks: job.stocks.map((stock) => ({ ...stock, width: 1 })),
      pieces: job.pieces.map((piece) => ({ ...piece, width: 1, turnable: false })),
    },
    EFFORT,
  );
}
