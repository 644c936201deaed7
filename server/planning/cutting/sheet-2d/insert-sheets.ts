import { OpenSheet } from './open-sheet.ts';
import type { JobStock, SheetJob } from './sheet-job.ts';

/**
 * Lays pieces one after another, each in the best place on any sheet that is open, else on a new sheet.
 *
 * `pieces`: piece indices in the order of laying. `stockOrder`: stocks to open, the preferred first; each stock's
 * limit is kept. `firstTurned`: the first piece of each
 * sheet lies turned when it may.
 * Result: the sheets, or null when a piece fits no stock that is left.
 * Source: best-fit insertion into slicing trees, see slicing-tree.ts.
 */
export function insertSheets(
  job: SheetJob,
  pieces: readonly number[],
  stockOrder: readonly number[],
  firstTurned: boolean,
): OpenSheet[] | null {
  const sheets: OpenSheet[] = [];
  const opened = job.stocks.map(() => 0);
  for (const piece of pieces) {
    let best = -1;
    let bestCost = Number.POSITIVE_INFINITY;
    for (let index = 0; index < sheets.length; index++) {
      const cost = (sheets[index] as OpenSheet).costOf(piece);
      if (cost < bestCost) {
        best = index;
        bestCost = cost;
      }
    }
    if (best >= 0) {
      (sheets[best] as OpenSheet).insert(piece, firstTurned);
      continue;
    }
    const stock = stockOrder.find(
      (index) =>
        (opened[index] as number) < (job.stocks[index] as JobStock).limit &&
        new OpenSheet(job, index, null).costOf(piece) < Number.POSITIVE_INFINITY,
    );
    if (stock === undefined) return null;
    opened[stock] = (opened[stock] as number) + 1;
    const sheet = new OpenSheet(job, stock, null);
    sheet.insert(piece, firstTurned);
    sheets.push(sheet);
  }
  return sheets;
}
