import type { FoundCut, FoundSheet } from '../../project-input.ts';
import type { JobPiece, JobStock, SheetJob } from '../sheet-2d/sheet-job.ts';
import { EXACT_WORK, EXACT_WORK_AT_ONCE, MOST_EXACT_SETS, MOST_EXACT_SPARES } from './constants.ts';

export interface ExactPlan {
  readonly sheets: readonly FoundSheet[];
  readonly cost: number;
}

/** The undominated rectangles that a set of pieces can be cut from, shortest first, and how each is put together. */
interface Shapes {
  readonly lengths: number[];
  readonly widths: number[];
  /** Per rectangle: the two sets, which of their rectangles, and along which direction they lie side by side. */
  readonly made: {
    readonly half: number;
    readonly first: number;
    readonly second: number;
    readonly row: boolean;
  }[];
}

/**
 * The cheapest plan of all, for a small job: which nothing can beat.
 *
 * `job`: see sheet-job.ts. Result: a generator that yields now and then and returns the plan; null when the job is too
 * large. Method: for every set of pieces (equal pieces are one kind, so a set is a number of each) that fits one sheet,
 * all least rectangles it can be cut from, out of those of its two halves side by side or one above the other, over all
 * ways to halve it; then the cheapest way to share the pieces out to sheets, over all sets. Every guillotine plan
 * is a tree of such halvings, so none is missed. Source: the recursion is that of P. C. Gilmore and R. E. Gomory,
 * "Multistage cutting stock problems of two and more dimensions", Operations Research 13 (1965), over sets of pieces.
 */
export function* exactSheets(job: SheetJob): Generator<void, ExactPlan | null, void> {
  const sets = pieceSets(job.pieces);
  const spares = sparesOf(job.stocks);
  if (sets === null || spares === null) return null;
  let work = 0;
  let rested = 0;

  // Least rectangles of every set that some sheet may hold.
  const largest = {
    length: Math.max(...job.stocks.map(({ length }) => length)),
    width: Math.max(...job.stocks.map(({ width }) => width)),
    area: Math.max(...job.stocks.map(({ length, width }) => length * width)),
  };
  const shapes: (Shapes | null)[] = [null];
  for (let set = 1; set < sets.count; set++) {
    const digits = sets.digitsOf(set);
    if (sets.areaOf(digits) > largest.area) {
      shapes.push(null);
      continue;
    }
    const found: Shapes = { lengths: [], widths: [], made: [] };
    const lone = sets.loneKind(digits);
    if (lone !== null) {
      const { length, width, turnable } = job.pieces[lone] as JobPiece;
      if (length <= largest.length && width <= largest.width) add(found, length, width, 0, 0, 0, false);
      if (turnable && width <= largest.length && length <= largest.width)
        add(found, width, length, 0, 0, 1, false);
    } else {
      for (const half of sets.partsOf(digits)) {
        work++;
        const one = shapes[half];
        const other = shapes[set - half];
        // Each pair of halves once.
        if (half < set - half || !one || !other) continue;
        work += one.lengths.length + other.lengths.length;
        combine(found, one, other, half, largest);
      }
    }
    shapes.push(found.lengths.length === 0 ? null : found);
    if (work > EXACT_WORK) return null;
    if (work - rested > EXACT_WORK_AT_ONCE) {
      rested = work;
      yield;
    }
  }

  // Cheapest stock without limit for each set, then the cheapest cover of each set by such.
  const bought = job.stocks.map((_, stock) => stock).filter((stock) => job.stocks[stock]?.limit === Infinity);
  const stockFor = shapes.map((some) => cheapestFor(some, bought, job.stocks));
  const all = sets.count - 1;
  let least = new Float64Array(sets.count).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  const partFor = new Int32Array(sets.count);
  for (let set = 1; set < sets.count; set++) {
    for (const part of sets.partsOf(sets.digitsOf(set), true)) {
      work++;
      const stock = stockFor[part] as number;
      if (stock < 0) continue;
      const cost = (job.stocks[stock] as JobStock).cost + (least[set - part] as number);
      if (cost < (least[set] as number)) {
        least[set] = cost;
        partFor[set] = part;
      }
    }
    if (work > EXACT_WORK) return null;
    if (work - rested > EXACT_WORK_AT_ONCE) {
      rested = work;
      yield;
    }
  }

  // Stock there is one of: each may take any part of what is left, or nothing.
  const spareParts: Int32Array[] = [];
  for (const stock of spares) {
    const { cost } = job.stocks[stock] as JobStock;
    const fits = shapes.map((some) => shapeIn(some, job.stocks[stock] as JobStock) >= 0);
    const withSpare = least.slice();
    const parts = new Int32Array(sets.count);
    for (let set = 1; set < sets.count; set++) {
      for (const part of sets.partsOf(sets.digitsOf(set))) {
        work++;
        if (fits[part] !== true || cost + (least[set - part] as number) >= (withSpare[set] as number))
          continue;
        withSpare[set] = cost + (least[set - part] as number);
        parts[set] = part;
      }
      if (work > EXACT_WORK) return null;
      if (work - rested > EXACT_WORK_AT_ONCE) {
        rested = work;
        yield;
      }
    }
    spareParts.push(parts);
    least = withSpare;
  }

  // Back along the choices.
  const sheets: FoundSheet[] = [];
  let left = all;
  for (let spare = spares.length - 1; spare >= 0; spare--) {
    const part = spareParts[spare]?.[left] as number;
    const stock = spares[spare] as number;
    if (part === 0) continue;
    sheets.push(sheetOf(part, stock));
    left -= part;
  }
  while (left > 0) {
    const part = partFor[left] as number;
    if (part === 0) return null;
    sheets.push(sheetOf(part, stockFor[part] as number));
    left -= part;
  }
  return { sheets, cost: least[all] as number };

  function sheetOf(set: number, stock: number): FoundSheet {
    const shape = shapeIn(shapes[set] ?? null, job.stocks[stock] as JobStock);
    return { stock, count: 1, cut: cutOf(set, shape) };
  }

  function cutOf(set: number, shape: number): FoundCut {
    const { half, first, second, row } = (shapes[set] as Shapes).made[shape] as Shapes['made'][number];
    // A lone piece has no half; its second number says whether it is turned.
    if (half === 0)
      return {
        piece: (sets as PieceSets).loneKind((sets as PieceSets).digitsOf(set)) as number,
        turned: second === 1,
      };
    return { along: row ? 'length' : 'width', cuts: [cutOf(half, first), cutOf(set - half, second)] };
  }
}

interface PieceSets {
  /** Sets are numbered from 0, nothing, up to this less one, everything; a part has a lesser number. */
  readonly count: number;
  readonly digitsOf: (set: number) => readonly number[];
  readonly areaOf: (digits: readonly number[]) => number;
  /** The kind of a set of one piece; null for larger sets. */
  readonly loneKind: (digits: readonly number[]) => number | null;
  /** Every part of a set but nothing, itself included; `withFirst`: only those with a piece of its first kind. */
  readonly partsOf: (digits: readonly number[], withFirst?: boolean) => Iterable<number>;
}

/** Sets as numbers with one digit per kind; null when there are too many. */
function pieceSets(pieces: readonly JobPiece[]): PieceSets | null {
  const place: number[] = [];
  let count = 1;
  for (const piece of pieces) {
    place.push(count);
    count *= piece.count + 1;
    if (count > MOST_EXACT_SETS) return null;
  }
  const digitsOf = (set: number): number[] =>
    pieces.map((piece, kind) => Math.floor(set / (place[kind] as number)) % (piece.count + 1));
  return {
    count,
    digitsOf,
    areaOf: (digits) => digits.reduce((sum, digit, kind) => sum + digit * area(pieces[kind] as JobPiece), 0),
    loneKind(digits) {
      const total = digits.reduce((sum, digit) => sum + digit, 0);
      return total === 1 ? digits.indexOf(1) : null;
    },
    *partsOf(digits, withFirst = false) {
      const first = withFirst ? digits.findIndex((digit) => digit > 0) : -1;
      const part = digits.map((_, kind): number => (kind === first ? 1 : 0));
      let set = first < 0 ? 0 : (place[first] as number);
      for (;;) {
        if (set > 0) yield set;
        let kind = 0;
        for (; kind < digits.length; kind++) {
          if ((part[kind] as number) < (digits[kind] as number)) {
            part[kind] = (part[kind] as number) + 1;
            set += place[kind] as number;
            break;
          }
          const lowest = kind === first ? 1 : 0;
          set -= ((part[kind] as number) - lowest) * (place[kind] as number);
          part[kind] = lowest;
        }
        if (kind === digits.length) return;
      }
    },
  };
}

/** Stock with a limit, one entry each; null when there is too much of it to try. */
function sparesOf(stocks: readonly JobStock[]): number[] | null {
  const spares: number[] = [];
  for (const [stock, { limit }] of stocks.entries()) {
    if (limit === Infinity) continue;
    if (spares.length + limit > MOST_EXACT_SPARES) return null;
    for (let one = 0; one < limit; one++) spares.push(stock);
  }
  return spares;
}

/**
 * The least ways to lay a rectangle of each side by side, or one above the other. As wide as the wider of two they
 * may be, so of the narrower one only the shortest that is no wider can be of use: one walk along both lists, from
 * the widest on, meets every such pair. One above the other, the same with length for width.
 */
function combine(
  found: Shapes,
  one: Shapes,
  other: Shapes,
  half: number,
  largest: { readonly length: number; readonly width: number },
): void {
  const { lengths: oneLengths, widths: oneWidths } = one;
  const { lengths: otherLengths, widths: otherWidths } = other;
  // Lengths rise and widths fall along both lists.
  let first = 0;
  let second = 0;
  while (first < oneLengths.length && second < otherLengths.length) {
    const oneWidth = oneWidths[first] as number;
    const otherWidth = otherWidths[second] as number;
    const length = (oneLengths[first] as number) + (otherLengths[second] as number);
    if (length > largest.length) break;
    add(found, length, Math.max(oneWidth, otherWidth), half, first, second, true);
    // The wider one gives way to its next, which is narrower; while it is the wider, the other can only be longer.
    if (oneWidth >= otherWidth) first++;
    if (otherWidth >= oneWidth) second++;
  }
  first = oneLengths.length - 1;
  second = otherLengths.length - 1;
  while (first >= 0 && second >= 0) {
    const oneLength = oneLengths[first] as number;
    const otherLength = otherLengths[second] as number;
    const width = (oneWidths[first] as number) + (otherWidths[second] as number);
    if (width > largest.width) break;
    add(found, Math.max(oneLength, otherLength), width, half, first, second, false);
    if (oneLength >= otherLength) first--;
    if (otherLength >= oneLength) second--;
  }
}

/** Adds a rectangle unless another is no longer and no wider; drops those that it dominates. */
function add(
  { lengths, widths, made }: Shapes,
  length: number,
  width: number,
  half: number,
  first: number,
  second: number,
  row: boolean,
): void {
  let at = 0;
  while (at < lengths.length && (lengths[at] as number) <= length) {
    if ((widths[at] as number) <= width) return;
    at++;
  }
  // Those of the same length or longer that are as wide give way.
  while (at > 0 && lengths[at - 1] === length) at--;
  let end = at;
  while (end < lengths.length && (widths[end] as number) >= width) end++;
  lengths.splice(at, end - at, length);
  widths.splice(at, end - at, width);
  made.splice(at, end - at, { half, first, second, row });
}

/** Which rectangle of the set lies in the stock; -1 for none. */
function shapeIn(shapes: Shapes | null, stock: JobStock): number {
  if (shapes === null) return -1;
  return shapes.lengths.findIndex(
    (length, shape) => length <= stock.length && (shapes.widths[shape] as number) <= stock.width,
  );
}

function cheapestFor(shapes: Shapes | null, bought: readonly number[], stocks: readonly JobStock[]): number {
  let best = -1;
  for (const stock of bought) {
    const one = stocks[stock] as JobStock;
    if (best >= 0 && one.cost >= (stocks[best] as JobStock).cost) continue;
    if (shapeIn(shapes, one) >= 0) best = stock;
  }
  return best;
}

function area({ length, width }: { readonly length: number; readonly width: number }): number {
  return length * width;
}
