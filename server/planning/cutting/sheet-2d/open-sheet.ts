import { layOverSome, overSomeCost } from './lay-over-some.ts';
import { besideCost } from './place-cost.ts';
import type { JobPiece, JobStock, SheetJob } from './sheet-job.ts';
import {
  COLUMN,
  copyWithout,
  group,
  innerAxis,
  LEAF,
  leaf,
  measure,
  ROW,
  type SliceNode,
  spread,
  stagesUnder,
} from './slicing-tree.ts';

/** A place is a node index times 8 plus these bits and 1 for a turned piece. */
const COLUMN_BIT = 2;
const SOME_BIT = 4;

/** A stock with the tree of what is cut from it, and the best place for each piece as far as it has been asked. */
export class OpenSheet {
  readonly job: SheetJob;
  readonly stock: number;
  /** Every node, parents first; the same order in every copy. */
  readonly nodes: SliceNode[] = [];
  root: SliceNode | null;
  usedArea = 0;
  freeArea = 0;
  /** Per piece: cost of its best place (Infinity: no room), NaN before it is asked. */
  private placeCost: Float64Array | null = null;
  private place = new Int32Array(0);

  constructor(job: SheetJob, stock: number, root: SliceNode | null) {
    this.job = job;
    this.stock = stock;
    this.root = root;
    this.settle();
  }

  /** Recomputes sizes, room to grow and area after the tree has changed, and forgets the best places. */
  private settle(): void {
    this.nodes.length = 0;
    this.placeCost?.fill(Number.NaN);
    const { length, width } = this.job.stocks[this.stock] as JobStock;
    let used = 0;
    if (this.root !== null) {
      this.root.up = null;
      measure(this.root);
      spread(this.root, length - this.root.length, width - this.root.width, this.nodes);
      for (let index = 0; index < this.nodes.length; index++) {
        const node = this.nodes[index] as SliceNode;
        if (node.axis === LEAF) used += node.length * node.width;
      }
    }
    this.usedArea = used;
    this.freeArea = length * width - used;
  }

  /** Lower is better; Infinity when the piece does not fit. */
  costOf(piece: number): number {
    const { length, width } = this.job.pieces[piece] as JobPiece;
    if (length * width > this.freeArea) return Infinity;
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
    const { length, width, turnable } = this.job.pieces[piece] as JobPiece;
    const stock = this.job.stocks[this.stock] as JobStock;
    if (this.root === null) {
      const plain = length <= stock.length && width <= stock.width;
      const turned = turnable && width <= stock.length && length <= stock.width;
      this.place[piece] = plain ? 0 : 1;
      return plain || turned ? 0 : Infinity;
    }
    let best = Infinity;
    const { stages = Infinity } = this.job;
    const inner = innerAxis(this.job.pieces[piece] as JobPiece);
    const own = inner === LEAF ? 0 : 1;
    const ownUnder = (axis: number): number => own + (own === 1 && inner === axis ? 1 : 0);
    for (let turn = 0; turn < (turnable && length !== width ? 2 : 1); turn++) {
      const a = turn === 0 ? length : width;
      const b = turn === 0 ? width : length;
      for (let index = 0; index < this.nodes.length; index++) {
        const node = this.nodes[index] as SliceNode;
        const upAxis = node.up === null ? LEAF : node.up.axis;
        if (
          upAxis !== ROW &&
          a <= node.growLength &&
          b <= node.width + node.growWidth &&
          (stages === Infinity || stagesBeside(node, ROW, ownUnder(ROW)) <= stages)
        ) {
          const cost = besideCost(a, b, node.length, node.width, node.growLength, node.growWidth);
          if (cost < best) {
            best = cost;
            this.place[piece] = index * 8 + turn;
          }
        }
        if (
          upAxis !== COLUMN &&
          b <= node.growWidth &&
          a <= node.length + node.growLength &&
          (stages === Infinity || stagesBeside(node, COLUMN, ownUnder(COLUMN)) <= stages)
        ) {
          const cost = besideCost(b, a, node.width, node.length, node.growWidth, node.growLength);
          if (cost < best) {
            best = cost;
            this.place[piece] = index * 8 + COLUMN_BIT + turn;
          }
        }
        if (node.kids.length > 2 && node.level + 2 + Math.max(node.height, 1 + own) <= stages) {
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

  /** Lays the piece in its best place; it must have one. `firstTurned`: on an empty sheet, turned when it may. */
  insert(piece: number, firstTurned: boolean): void {
    this.costOf(piece);
    const { length, width, turnable } = this.job.pieces[piece] as JobPiece;
    const place = this.place[piece] as number;
    const stock = this.job.stocks[this.stock] as JobStock;
    const mayTurn = this.root === null && turnable && width <= stock.length && length <= stock.width;
    const turned = (place & 1) === 1 || (firstTurned && mayTurn);
    const inner = innerAxis(this.job.pieces[piece] as JobPiece);
    const item = leaf(piece, turned, turned ? width : length, turned ? length : width, inner);
    if (this.root === null) this.root = item;
    else {
      const target = this.nodes[place >> 3] as SliceNode;
      if ((place & SOME_BIT) !== 0) layOverSome(target, item);
      else this.layBeside(target, item, (place & COLUMN_BIT) !== 0 ? COLUMN : ROW);
    }
    this.settle();
  }

  private layBeside(target: SliceNode, item: SliceNode, axis: typeof ROW | typeof COLUMN): void {
    if (target.axis === axis) {
      target.kids.push(item);
      return;
    }
    const { up } = target;
    const both = group(axis, [target, item]);
    if (up === null) this.root = both;
    else up.kids[up.kids.indexOf(target)] = both;
  }

  /** A copy without the given nodes of this sheet. */
  without(dropped: ReadonlySet<SliceNode>): OpenSheet {
    return new OpenSheet(this.job, this.stock, this.root === null ? null : copyWithout(this.root, dropped));
  }
}

/** Stages of cuts down to and with a piece that is laid beside the node in a row or column. */
function stagesBeside(node: SliceNode, axis: typeof ROW | typeof COLUMN, own: number): number {
  return node.level + 1 + (node.axis === axis ? own : Math.max(stagesUnder(node, axis), own));
}
