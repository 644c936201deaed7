import type { CutNode } from '../../plan-output.ts';
import { LEAST_OFFCUT_MM } from '../constants.ts';
import { COLUMN, LEAF, ROW, type SliceNode } from './slicing-tree.ts';

/** What a leaf is cut to, with its exact laid size: a part, or the parts of a grain match. */
export type PartOf = (leaf: SliceNode) => CutNode;

export interface CutSize {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly kerfMm: number;
  /** Stages there may be, trimming a part not counted; left out: any number. */
  readonly mostStages?: number;
}

/**
 * The saw cuts that make the pieces of a slicing tree out of one sheet.
 *
 * `root`: the tree. `lengthMm`, `widthMm`: the trimmed sheet. `kerfMm`: lost between neighbours. `nameOf`: the part
 * node for a leaf. Result: a tree that fills the sheet: the children of every split and one kerf between neighbours
 * come to the parent's size. A remainder no wider than the kerf is lost in the last cut and not drawn.
 * Method: ours. A row or column keeps its remainder in one offcut at the end; at the root the larger offcut wins.
 */
export function cutTree(root: SliceNode, size: CutSize, nameOf: PartOf): CutNode {
  const { lengthMm, widthMm, kerfMm, mostStages = Infinity } = size;
  const least = leastSize(root, kerfMm, nameOf);
  const offLength = lengthMm - least.lengthMm;
  const offWidth = widthMm - least.widthMm;
  // With room both ways, the first cut frees the larger offcut.
  const lengthFirst = offLength * widthMm >= offWidth * lengthMm;
  // That cut is a stage of its own before those of the tree.
  const spare = stagesOf(root) < mostStages;
  if ((spare || root.axis === LEAF) && root.axis !== COLUMN && !lengthFirst && offWidth > LEAST_OFFCUT_MM) {
    const inner = fill(root, { lengthMm, widthMm: least.widthMm, kerfMm }, nameOf);
    return splitOf('width', size, [inner]);
  }
  if (spare && root.axis === COLUMN && lengthFirst && offLength > LEAST_OFFCUT_MM) {
    const inner = fill(root, { lengthMm: least.lengthMm, widthMm, kerfMm }, nameOf);
    return splitOf('length', size, [inner]);
  }
  return fill(root, size, nameOf);
}

/** Stages that the tree takes by itself. */
function stagesOf(node: SliceNode): number {
  return node.kids.length === 0
    ? node.height
    : 1 + Math.max(...node.kids.map((kid) => stagesOf(kid) + (kid.inner === node.axis ? 1 : 0)));
}

function leastSize(node: SliceNode, kerfMm: number, nameOf: PartOf): { lengthMm: number; widthMm: number } {
  if (node.axis === LEAF) {
    const { lengthMm, widthMm } = nameOf(node);
    return { lengthMm, widthMm };
  }
  let along = -kerfMm;
  let across = 0;
  for (const kid of node.kids) {
    const least = leastSize(kid, kerfMm, nameOf);
    along += kerfMm + (node.axis === ROW ? least.lengthMm : least.widthMm);
    across = Math.max(across, node.axis === ROW ? least.widthMm : least.lengthMm);
  }
  return node.axis === ROW ? { lengthMm: along, widthMm: across } : { lengthMm: across, widthMm: along };
}

/** Cuts the node out of a rectangle of the given size. */
function fill(node: SliceNode, size: CutSize, nameOf: PartOf): CutNode {
  const { lengthMm, widthMm, kerfMm } = size;
  if (node.axis === LEAF) {
    const part = nameOf(node);
    // Of a piece cut into parts along the length the width is trimmed first, so that those cuts are of one stage.
    const widthFirst = part.type === 'split' && part.along === 'length';
    if (widthFirst && widthMm - part.widthMm > LEAST_OFFCUT_MM)
      return splitOf('width', size, [fill(node, { ...size, widthMm: part.widthMm }, nameOf)]);
    if (lengthMm - part.lengthMm > LEAST_OFFCUT_MM) {
      const inner = fill(node, { ...size, lengthMm: part.lengthMm }, nameOf);
      return splitOf('length', size, [inner]);
    }
    return widthMm - part.widthMm > LEAST_OFFCUT_MM ? splitOf('width', size, [part]) : part;
  }
  const along = node.axis === ROW ? 'lengthMm' : 'widthMm';
  const kids = node.kids.map((kid) => ({ kid, least: leastSize(kid, kerfMm, nameOf) }));
  // Large pieces first and equal ones together: fewer settings of the fence.
  kids.sort(
    (left, right) =>
      right.least[along] - left.least[along] ||
      right.least.lengthMm * right.least.widthMm - left.least.lengthMm * left.least.widthMm,
  );
  const children = kids.map(({ kid, least }) => fill(kid, { ...size, [along]: least[along] }, nameOf));
  return splitOf(node.axis === ROW ? 'length' : 'width', size, children);
}

/** A split whose remainder beyond one more kerf becomes an offcut. */
function splitOf(along: 'length' | 'width', size: CutSize, children: readonly CutNode[]): CutNode {
  const { lengthMm, widthMm, kerfMm } = size;
  let left = along === 'length' ? lengthMm : widthMm;
  for (const child of children) left -= kerfMm + (along === 'length' ? child.lengthMm : child.widthMm);
  if (left <= LEAST_OFFCUT_MM) return { type: 'split', along, lengthMm, widthMm, children };
  const offcut: CutNode =
    along === 'length'
      ? { type: 'offcut', lengthMm: left, widthMm }
      : { type: 'offcut', lengthMm, widthMm: left };
  return { type: 'split', along, lengthMm, widthMm, children: [...children, offcut] };
}
