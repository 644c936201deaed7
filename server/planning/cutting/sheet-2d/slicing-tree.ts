import type { JobPiece } from './sheet-job.ts';

/**
 * A sheet as a slicing tree of least sizes. A leaf is a piece; a row lays its children side by side along the
 * length, a column along the width, and the kinds alternate down the tree, so every tree is a guillotine plan and
 * every guillotine plan is such a tree. A row is as long as its children together and as wide as the widest.
 *
 * Each node also knows how far it may grow each way before the sheet is too small. Whether a piece fits beside a
 * node is then a comparison of two numbers, not a search. Sizes without kerf: see sheet-job.ts.
 * Source: least-size slicing trees and insertion into them follow the idea of K. Fleszar, "Three insertion
 * heuristics and a justification improvement heuristic for two-dimensional bin packing with guillotine cuts",
 * Computers & Operations Research 40 (2013).
 */
export const LEAF = 0;
export const ROW = 1;
export const COLUMN = 2;
export type Axis = typeof LEAF | typeof ROW | typeof COLUMN;

export interface SliceNode {
  readonly axis: Axis;
  /** Piece index of a leaf, else -1. */
  readonly piece: number;
  readonly turned: boolean;
  length: number;
  width: number;
  /** How much the node may grow. */
  growLength: number;
  growWidth: number;
  /** Rows and columns that the node lies in, and that it is made of at most. */
  level: number;
  height: number;
  /** How the parts of a leaf lie that is cut into several; LEAF for one part. */
  readonly inner: Axis;
  readonly kids: SliceNode[];
  up: SliceNode | null;
}

/** A new leaf. Sizes are as laid, in grid units. */
export function leaf(
  piece: number,
  turned: boolean,
  length: number,
  width: number,
  inner: Axis = LEAF,
): SliceNode {
  return {
    axis: LEAF,
    piece,
    turned,
    length,
    width,
    growLength: 0,
    growWidth: 0,
    level: 0,
    height: inner === LEAF ? 0 : 1,
    inner,
    kids: [],
    up: null,
  };
}

/** How the parts of a piece lie. */
export function innerAxis({ inner }: JobPiece): Axis {
  return inner === undefined ? LEAF : inner === 'length' ? ROW : COLUMN;
}

/** Stages that a node takes below a row or column: parts that lie the same way need the piece trimmed first. */
export function stagesUnder({ height, inner }: SliceNode, axis: Axis): number {
  return height + (inner !== LEAF && inner === axis ? 1 : 0);
}

function bare(axis: typeof ROW | typeof COLUMN, kids: SliceNode[]): SliceNode {
  return {
    axis,
    piece: -1,
    turned: false,
    length: 0,
    width: 0,
    growLength: 0,
    growWidth: 0,
    level: 0,
    height: 0,
    inner: LEAF,
    kids,
    up: null,
  };
}

/** A new row or column of the children; a child of the same kind gives its own children instead. */
export function group(axis: typeof ROW | typeof COLUMN, children: readonly SliceNode[]): SliceNode {
  const kids: SliceNode[] = [];
  for (let index = 0; index < children.length; index++) {
    const child = children[index] as SliceNode;
    if (child.axis !== axis) kids.push(child);
    else for (let kid = 0; kid < child.kids.length; kid++) kids.push(child.kids[kid] as SliceNode);
  }
  return bare(axis, kids);
}

/** Recomputes sizes from the leaves up. */
export function measure(node: SliceNode): void {
  if (node.axis === LEAF) return;
  let along = 0;
  let across = 0;
  let height = 0;
  for (const kid of node.kids) {
    measure(kid);
    kid.up = node;
    const stages = stagesUnder(kid, node.axis);
    if (stages > height) height = stages;
    const length = node.axis === ROW ? kid.length : kid.width;
    const width = node.axis === ROW ? kid.width : kid.length;
    along += length;
    if (width > across) across = width;
  }
  node.height = height + 1;
  node.length = node.axis === ROW ? along : across;
  node.width = node.axis === ROW ? across : along;
}

/** Recomputes room to grow from the node down, and appends every node to `nodes`, parents first. */
export function spread(
  node: SliceNode,
  growLength: number,
  growWidth: number,
  nodes: SliceNode[],
  level = 0,
): void {
  node.level = level;
  node.growLength = growLength;
  node.growWidth = growWidth;
  nodes.push(node);
  for (const kid of node.kids) {
    if (node.axis === ROW) spread(kid, growLength, growWidth + node.width - kid.width, nodes, level + 1);
    else spread(kid, growLength + node.length - kid.length, growWidth, nodes, level + 1);
  }
}

/** A copy of the tree without the dropped leaves; null when nothing is left. */
export function copyWithout(node: SliceNode, dropped: ReadonlySet<SliceNode> | null): SliceNode | null {
  if (dropped?.has(node)) return null;
  if (node.axis === LEAF) return leaf(node.piece, node.turned, node.length, node.width, node.inner);
  const kids: SliceNode[] = [];
  for (const kid of node.kids) {
    const copy = copyWithout(kid, dropped);
    if (copy === null) continue;
    if (copy.axis === node.axis) kids.push(...copy.kids);
    else kids.push(copy);
  }
  if (kids.length === 0) return null;
  if (kids.length === 1) return kids[0] as SliceNode;
  return bare(node.axis, kids);
}
