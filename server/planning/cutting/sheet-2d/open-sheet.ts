import type { SheetJob } from './sheet-job.ts';
import {
  type Axis,
  COLUMN,
  copyWithout,
  group,
  LEAF,
  leaf,
  measure,
  ROW,
  type SliceNode,
  spread,
} from './slicing-tree.ts';

/** A place is a node index times 8 plus these bits and 1 for a turned piece. */
const COLUMN_BIT = 2;
const SOME_BIT = 4;

/** A stock with the tree of what is cut from it, and the best place for each piece as far as it has been asked. */
export class OpenSheet {
  readonly job: SheetJob;
  readonly stock: number;
  readonly root: SliceNode | null;
  /** Every node, parents first; the same order in every copy. */
  readonly nodes: SliceNode[] = [];
  readonly usedArea: number;
  /** Per piece: cost of its best place (Infinity: no room), NaN before it is asked. */
  private placeCost: Float64Array | null = null;
  private place = new Int32Array(0);

  constructor(job: SheetJob, stock: number, root: SliceNode | null) {
    this.job = job;
    this.stock = stock;
    this.root = root;
    const size = job.stocks[stock] as { length: number; width: number };
    let used = 0;
    if (root !== null) {
      root.up = null;
      measure(root);
      spread(root, size.length - root.length, size.width - root.width, this.nodes);
      for (const node of this.nodes) if (node.axis === LEAF) used += node.length * node.width;
    }
    this.usedArea = used;
  }

  /** Lower is better; Infinity when the piece does not fit. */
  costOf(piece: number): number {
    if (this.placeCost === null) {
      this.placeCost = new Float64Array(this.job.pieces.length).fill(Number.NaN);
      this.place = new Int32Array(this.job.pieces.length);
    }
    const known = this.placeCost[piece] as number;
    if (!Number.isNaN(known)) return known;
    const cost = this.search(piece);
    this.placeCost[piece] = cost;
    return cost;
  }

  private search(piece: number): number {
    const { length, width, turnable } = this.job.pieces[piece] as {
      length: number;
      width: number;
      turnable: boolean;
    };
    if (this.root === null) {
      const stock = this.job.stocks[this.stock] as { length: number; width: number };
      const plain =
        length <= stock.length && width <= stock.width
          ? emptyCost(stock.length - length, stock.width - width)
          : Infinity;
      const turned =
        turnable && width <= stock.length && length <= stock.width
          ? emptyCost(stock.length - width, stock.width - length)
          : Infinity;
      this.place[piece] = turned < plain ? 1 : 0;
      return Math.min(plain, turned);
    }
    let best = Infinity;
    for (let turn = 0; turn < (turnable && length !== width ? 2 : 1); turn++) {
      const a = turn === 0 ? length : width;
      const b = turn === 0 ? width : length;
      for (let index = 0; index < this.nodes.length; index++) {
        const node = this.nodes[index] as SliceNode;
        const upAxis = node.up === null ? LEAF : node.up.axis;
        if (upAxis !== ROW && a <= node.growLength && b <= node.width + node.growWidth) {
          const cost = besideCost(a, b, node.length, node.width, node.growLength, node.growWidth);
          if (cost < best) {
            best = cost;
            this.place[piece] = index * 8 + turn;
          }
        }
        if (upAxis !== COLUMN && b <= node.growWidth && a <= node.length + node.growLength) {
          const cost = besideCost(b, a, node.width, node.length, node.growWidth, node.growLength);
          if (cost < best) {
            best = cost;
            this.place[piece] = index * 8 + COLUMN_BIT + turn;
          }
        }
        if (node.kids.length > 2) {
          const cost =
            node.axis === ROW
              ? overSomeCost(node, a, b, node.growLength, node.width + node.growWidth)
              : overSomeCost(node, b, a, node.growWidth, node.length + node.growLength);
          if (cost < best) {
            best = cost;
            this.place[piece] = index * 8 + SOME_BIT + turn;
          }
        }
      }
    }
    return best;
  }

  /** A copy of this sheet with the piece in its best place. */
  with(piece: number): OpenSheet {
    this.costOf(piece);
    const { length, width } = this.job.pieces[piece] as { length: number; width: number };
    const place = this.place[piece] as number;
    const turned = (place & 1) === 1;
    const item = leaf(piece, turned, turned ? width : length, turned ? length : width);
    if (this.root === null) return new OpenSheet(this.job, this.stock, item);
    const target = this.nodes[place >> 3] as SliceNode;
    if ((place & SOME_BIT) !== 0) {
      const some = kidsUnder(
        target,
        item,
        target.length + target.growLength,
        target.width + target.growWidth,
      );
      return new OpenSheet(this.job, this.stock, copyInserting(this.root, target, target.axis, item, some));
    }
    const axis = (place & COLUMN_BIT) !== 0 ? COLUMN : ROW;
    return new OpenSheet(this.job, this.stock, copyInserting(this.root, target, axis, item, null));
  }

  /** A copy without the given nodes of this sheet. */
  without(dropped: ReadonlySet<SliceNode>): OpenSheet {
    return new OpenSheet(this.job, this.stock, this.root === null ? null : copyWithout(this.root, dropped));
  }
}

/**
 * A copy of the tree with the item beside the target along the axis; or, with `some` given, beside those children of the
 * target, which are brought together for it.
 */
function copyInserting(
  node: SliceNode,
  target: SliceNode,
  axis: Axis,
  item: SliceNode,
  some: readonly SliceNode[] | null,
): SliceNode {
  if (node === target) {
    if (some === null) return group(axis as typeof ROW, [copyWithout(node, null) as SliceNode, item]);
    const copies = (kids: readonly SliceNode[]): SliceNode[] =>
      kids.map((kid) => copyWithout(kid, null) as SliceNode);
    const together = group(node.axis as typeof ROW, copies(some));
    const under = group(node.axis === ROW ? COLUMN : ROW, [together, item]);
    return group(node.axis as typeof ROW, [...copies(node.kids.filter((kid) => !some.includes(kid))), under]);
  }
  if (node.axis === LEAF) return leaf(node.piece, node.turned, node.length, node.width);
  return group(
    node.axis,
    node.kids.map((kid) => copyInserting(kid, target, axis, item, some)),
  );
}

/**
 * Cost of laying a by b over some children of a row (for a column: sizes exchanged), a along the row. `growAlong`: how much
 * the row may grow; `room`: how wide it may be.
 */
function overSomeCost(node: SliceNode, a: number, b: number, growAlong: number, room: number): number {
  const most = room - b;
  const row = node.axis === ROW;
  let fitting = 0;
  for (const kid of node.kids) if ((row ? kid.width : kid.length) <= most) fitting++;
  if (fitting < 2) return Infinity;
  let along = 0;
  let across = 0;
  let taken = 0;
  let last = Infinity;
  let lastAt = -1;
  // Widest first, ties in order, until they are as long as the item.
  while (along < a && taken < fitting) {
    let next = -1;
    let nextAcross = -1;
    for (let at = 0; at < node.kids.length; at++) {
      const kid = node.kids[at] as SliceNode;
      const size = row ? kid.width : kid.length;
      if (size > most || size > last || (size === last && at <= lastAt) || size <= nextAcross) continue;
      next = at;
      nextAcross = size;
    }
    if (next < 0) break;
    const kid = node.kids[next] as SliceNode;
    along += row ? kid.length : kid.width;
    if (taken === 0) across = nextAcross;
    last = nextAcross;
    lastAt = next;
    taken++;
  }
  if (taken < 2 || taken === node.kids.length || a - along > growAlong) return Infinity;
  const mismatch = along > a ? (along - a) * b : (a - along) * across;
  return (
    mismatch / (a * b) +
    (0.3 * Math.min(most - across, Math.max(0, growAlong - Math.max(0, a - along)))) / (a + b)
  );
}

/** The children that overSomeCost reckoned with. */
function kidsUnder(node: SliceNode, item: SliceNode, roomLength: number, roomWidth: number): SliceNode[] {
  const row = node.axis === ROW;
  const most = row ? roomWidth - item.width : roomLength - item.length;
  const need = row ? item.length : item.width;
  const size = (kid: SliceNode): number => (row ? kid.width : kid.length);
  const sorted = node.kids.filter((kid) => size(kid) <= most).sort((left, right) => size(right) - size(left));
  const chosen: SliceNode[] = [];
  let along = 0;
  for (const kid of sorted) {
    if (along >= need) break;
    chosen.push(kid);
    along += row ? kid.length : kid.width;
  }
  return chosen;
}

function emptyCost(left: number, top: number): number {
  return Math.min(left, top);
}

/** Cost of laying a by b beside a node (a along the joint direction). */
function besideCost(
  a: number,
  b: number,
  along: number,
  across: number,
  growAlong: number,
  growAcross: number,
): number {
  const mismatch = b < across ? a * (across - b) : (b - across) * along;
  return mismatch / (a * b) + (0.3 * Math.min(growAlong - a, across + growAcross - b)) / (a + b);
}
