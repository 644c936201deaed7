import type { SheetJob } from './sheet-job.ts';
import {
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
            this.place[piece] = index * 4 + turn;
          }
        }
        if (upAxis !== COLUMN && b <= node.growWidth && a <= node.length + node.growLength) {
          const cost = besideCost(b, a, node.width, node.length, node.growWidth, node.growLength);
          if (cost < best) {
            best = cost;
            this.place[piece] = index * 4 + 2 + turn;
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
    const axis = (place & 2) === 2 ? COLUMN : ROW;
    const root = copyInserting(this.root, this.nodes[place >> 2] as SliceNode, axis, item);
    return new OpenSheet(this.job, this.stock, root);
  }

  /** A copy without the given nodes of this sheet. */
  without(dropped: ReadonlySet<SliceNode>): OpenSheet {
    return new OpenSheet(this.job, this.stock, this.root === null ? null : copyWithout(this.root, dropped));
  }
}

function copyInserting(
  node: SliceNode,
  target: SliceNode,
  axis: typeof ROW | typeof COLUMN,
  item: SliceNode,
): SliceNode {
  if (node === target) {
    const copy = copyWithout(node, null) as SliceNode;
    return group(axis, [copy, item]);
  }
  if (node.axis === LEAF) return leaf(node.piece, node.turned, node.length, node.width);
  return group(
    node.axis,
    node.kids.map((kid) => copyInserting(kid, target, axis, item)),
  );
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
