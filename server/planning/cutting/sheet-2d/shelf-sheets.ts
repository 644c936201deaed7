import { firstFitDecreasing } from '../first-fit-decreasing.ts';
import { firstFitInOrder } from '../first-fit-in-order.ts';
import { OpenSheet } from './open-sheet.ts';
import type { JobPiece, JobStock, SheetJob } from './sheet-job.ts';
import { COLUMN, group, innerAxis, leaf, ROW, type SliceNode } from './slicing-tree.ts';

/**
 * Lays many pieces on sheets of one stock quickly: the widest pieces first, in strips; then the strips on sheets.
 *
 * `stockIndex`: the stock to use, as many as it takes. `pieces`: piece indices of the job, once per piece, each
 * fitting the stock. `along`: ROW for strips along the sheet's length, COLUMN for strips along its width.
 * Result: the sheets, each a guillotine plan of at most three stages.
 * Source: first fit decreasing height, E. G. Coffman et al., "Performance bounds for level-oriented two-dimensional
 * packing algorithms", SIAM Journal on Computing 9 (1980); strips to sheets by first fit decreasing. Both steps
 * use a tournament tree: n pieces take O(n log n).
 */
export function shelfSheets(
  job: SheetJob,
  stockIndex: number,
  pieces: readonly number[],
  along: typeof ROW | typeof COLUMN,
): OpenSheet[] {
  const stock = job.stocks[stockIndex] as JobStock;
  const shelfLength = along === ROW ? stock.length : stock.width;
  const sheetWidth = along === ROW ? stock.width : stock.length;
  const laid = pieces.map((piece) => lay(job, piece, along, shelfLength, sheetWidth));
  const length = (node: SliceNode): number => (along === ROW ? node.length : node.width);
  const width = (node: SliceNode): number => (along === ROW ? node.width : node.length);
  laid.sort(
    (left, right) => width(right) - width(left) || length(right) - length(left) || left.piece - right.piece,
  );

  // Widest first, so the first piece of a shelf sets its width and every later one fits under it.
  const shelves: SliceNode[][] = [];
  const shelfOf = firstFitInOrder(laid.map(length), shelfLength);
  for (const [index, node] of laid.entries()) {
    const shelf = shelfOf[index] as number;
    if (shelves[shelf] === undefined) shelves[shelf] = [];
    shelves[shelf].push(node);
  }
  const shelfWidths = shelves.map((shelf) => width(shelf[0] as SliceNode));
  const sheetOf = firstFitDecreasing(shelfWidths, sheetWidth);
  const sheets: SliceNode[][] = [];
  const across = along === ROW ? COLUMN : ROW;
  for (const [index, shelf] of shelves.entries()) {
    const sheet = sheetOf[index] as number;
    if (sheets[sheet] === undefined) sheets[sheet] = [];
    sheets[sheet].push(shelf.length === 1 ? (shelf[0] as SliceNode) : group(along, shelf));
  }
  return sheets.map((strips) => {
    const root = strips.length === 1 ? (strips[0] as SliceNode) : group(across, strips);
    return new OpenSheet(job, stockIndex, root);
  });
}

/** A piece laid so that its strip is as narrow as can be. */
function lay(
  job: SheetJob,
  index: number,
  along: number,
  shelfLength: number,
  sheetWidth: number,
): SliceNode {
  const { length, width, turnable } = job.pieces[index] as JobPiece;
  const plainLong = along === ROW ? length : width;
  const plainWide = along === ROW ? width : length;
  const plainFits = plainLong <= shelfLength && plainWide <= sheetWidth;
  const turnedFits = turnable && plainWide <= shelfLength && plainLong <= sheetWidth;
  const turned = turnedFits && (!plainFits || plainLong < plainWide);
  const inner = innerAxis(job.pieces[index] as JobPiece);
  return turned ? leaf(index, true, width, length, inner) : leaf(index, false, length, width, inner);
}
