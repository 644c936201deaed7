import { OpenSheet } from './open-sheet.ts';
import { type PieceOrder, piecesBySize } from './pieces-by-size.ts';
import type { JobStock, SheetJob } from './sheet-job.ts';
import { LEAF, type SliceNode } from './slicing-tree.ts';

const ORDERS: readonly PieceOrder[] = ['area', 'longer-side', 'length', 'width'];
const NONE: ReadonlySet<SliceNode> = new Set();

/**
 * The same sheets, at no more cost, with the waste of the emptiest one gathered in a larger offcut.
 *
 * `job`, `sheets`: a plan. Result: the plan with pieces of the emptiest bought sheet moved to wherever else they fit, and
 * the rest of them laid anew in several orders, the one kept that leaves the largest rectangle to one straight cut;
 * a sheet that becomes empty is not bought. The plan as given when nothing is gained. Rule of ours, no source.
 */
export function gatherOffcut(job: SheetJob, sheets: readonly OpenSheet[]): readonly OpenSheet[] {
  let last: OpenSheet | null = null;
  for (const sheet of sheets) {
    if (Number.isFinite(stockOf(job, sheet).limit)) continue;
    if (last === null || sheet.usedArea < last.usedArea) last = sheet;
  }
  if (last === null) return sheets;
  const others = sheets.filter((sheet) => sheet !== last).map((sheet) => sheet.without(NONE));
  const left = job.pieces.map(() => 0);
  for (const { axis, piece } of last.nodes) if (axis === LEAF) left[piece] = (left[piece] as number) + 1;

  // The large ones first: moving those frees most.
  for (const piece of piecesBySize(withCounts(job, left), 'area')) {
    const place = others.reduce<OpenSheet | null>((best, sheet) => {
      const cost = sheet.costOf(piece);
      return cost < (best === null ? Number.POSITIVE_INFINITY : best.costOf(piece)) ? sheet : best;
    }, null);
    if (place === null) continue;
    place.insert(piece, false);
    left[piece] = (left[piece] as number) - 1;
  }
  const rest = withCounts(job, left);
  if (left.every((count) => count === 0)) return others;

  let best: OpenSheet | null = null;
  for (const order of ORDERS) {
    for (const firstTurned of [false, true]) {
      const laid = layAll(job, last.stock, piecesBySize(rest, order), firstTurned);
      if (laid !== null && (best === null || offcutArea(laid) > offcutArea(best))) best = laid;
    }
  }
  return best !== null && offcutArea(best) > offcutArea(last) ? [...others, best] : sheets;
}

function stockOf(job: SheetJob, sheet: OpenSheet): JobStock {
  return job.stocks[sheet.stock] as JobStock;
}

function withCounts(job: SheetJob, counts: readonly number[]): SheetJob {
  return { ...job, pieces: job.pieces.map((piece, index) => ({ ...piece, count: counts[index] as number })) };
}

function layAll(
  job: SheetJob,
  stock: number,
  pieces: readonly number[],
  firstTurned: boolean,
): OpenSheet | null {
  const sheet = new OpenSheet(job, stock, null);
  for (const piece of pieces) {
    if (sheet.costOf(piece) === Number.POSITIVE_INFINITY) return null;
    sheet.insert(piece, firstTurned);
  }
  return sheet;
}

/** The larger rectangle that one straight cut frees beside everything laid. */
function offcutArea(sheet: OpenSheet): number {
  if (sheet.root === null) return Number.POSITIVE_INFINITY;
  const { length, width } = stockOf(sheet.job, sheet);
  return Math.max((length - sheet.root.length) * width, (width - sheet.root.width) * length);
}
