import { insertSheets } from './insert-sheets.ts';
import { OpenSheet } from './open-sheet.ts';
import { type PieceOrder, piecesBySize } from './pieces-by-size.ts';
import type { JobPiece, JobStock, SheetJob } from './sheet-job.ts';
import { costOf } from './sheet-search.ts';
import { shelfSheets } from './shelf-sheets.ts';
import { COLUMN, ROW } from './slicing-tree.ts';

/** Up to here pieces are laid one by one, in several orders; longer lists are laid in strips. */
const FEW_PIECES = 150;
/** In a long list only so many offcuts are offered, so that the time stays in proportion. */
const OFFCUTS_OFFERED = 20;
const ORDERS: readonly PieceOrder[] = ['area', 'longer-side', 'length', 'width'];

/**
 * A good first plan in little time: the cheapest of several one-pass plans.
 *
 * `job`: see sheet-job.ts; every piece must fit some stock of which there is no limit.
 * Result: the sheets. The time grows as n log n: short lists are laid by insertion in several orders, long ones in
 * strips. Stock that costs nothing is used first. Rule of ours, no source.
 */
export function startSheets(job: SheetJob): readonly OpenSheet[] {
  const free = job.stocks.flatMap((stock, index) => (Number.isFinite(stock.limit) ? [index] : []));
  const bought = job.stocks.flatMap((stock, index) => (Number.isFinite(stock.limit) ? [] : [index]));
  const count = job.pieces.reduce((sum, piece) => sum + piece.count, 0);
  // Strips of pieces that are cut again into parts may take a stage more than there may be.
  const oneByOne = count <= FEW_PIECES || (job.stages !== undefined && job.pieces.some(({ inner }) => inner));
  const turnable = job.pieces.some((piece) => piece.turnable);
  const plans: OpenSheet[][] = [];
  for (const main of bought) {
    const others = bought.filter((stock) => stock !== main).sort((a, b) => rate(job, a) - rate(job, b));
    const stockOrder = [...free, main, ...others];
    for (const order of oneByOne ? ORDERS : []) {
      for (const firstTurned of turnable ? [false, true] : [false]) {
        const plan = insertSheets(job, piecesBySize(job, order), stockOrder, firstTurned);
        if (plan !== null) plans.push(plan);
      }
    }
    if (!oneByOne) plans.push(...stripPlans(job, free, [main, ...others]));
  }
  return plans.reduce((best, plan) => (costOf(job, plan) < costOf(job, best) ? plan : best));
}

function rate(job: SheetJob, index: number): number {
  const { cost, length, width } = job.stocks[index] as JobStock;
  return cost / (length * width);
}

/** Offcuts filled first, the rest in strips along or across the preferred stock, or the next one that is large enough. */
function stripPlans(job: SheetJob, free: readonly number[], stockOrder: readonly number[]): OpenSheet[][] {
  const { filled, rest } = fillOffcuts(job, free);
  const byStock = new Map<number, number[]>();
  const stockFor = job.pieces.map((piece) =>
    stockOrder.find((stock) => fits(piece, job.stocks[stock] as JobStock)),
  );
  for (const piece of rest) {
    const stock = stockFor[piece];
    if (stock === undefined) return [];
    const list = byStock.get(stock);
    if (list === undefined) byStock.set(stock, [piece]);
    else list.push(piece);
  }
  return [ROW, COLUMN].map((along) => [
    ...filled,
    ...[...byStock].flatMap(([stock, pieces]) =>
      shelfSheets(job, stock, pieces, along as typeof ROW | typeof COLUMN),
    ),
  ]);
}

function fits(piece: JobPiece, stock: JobStock): boolean {
  return (
    (piece.length <= stock.length && piece.width <= stock.width) ||
    (piece.turnable && piece.width <= stock.length && piece.length <= stock.width)
  );
}

function fillOffcuts(job: SheetJob, free: readonly number[]): { filled: OpenSheet[]; rest: number[] } {
  const left = job.pieces.map((piece) => piece.count);
  const order = job.pieces.map((_, index) => index);
  const area = (index: number): number =>
    (job.pieces[index] as JobPiece).length * (job.pieces[index] as JobPiece).width;
  order.sort((a, b) => area(b) - area(a) || a - b);
  const filled: OpenSheet[] = [];
  const offered = free.flatMap((stock) =>
    Array<number>(Math.min((job.stocks[stock] as JobStock).limit, OFFCUTS_OFFERED)).fill(stock),
  );
  for (const stock of offered.slice(0, OFFCUTS_OFFERED)) {
    const sheet = new OpenSheet(job, stock, null);
    for (const piece of order) {
      while ((left[piece] as number) > 0 && sheet.costOf(piece) < Number.POSITIVE_INFINITY) {
        sheet.insert(piece, false);
        left[piece] = (left[piece] as number) - 1;
      }
    }
    if (sheet.root !== null) filled.push(sheet);
  }
  return { filled, rest: left.flatMap((count, piece) => Array<number>(count).fill(piece)) };
}
