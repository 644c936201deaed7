import type { FoundCut } from '../../project-input.ts';
import type { JobPiece } from '../sheet-2d/sheet-job.ts';
import { COLUMN, group, innerAxis, LEAF, leaf, ROW, type SliceNode } from '../sheet-2d/slicing-tree.ts';

/**
 * A found cut as the slicing tree that the search and the drawing work on.
 *
 * `cut`: see FoundCut. `pieces`: of the question, grid units. Result: a tree of its own, sizes of leaves set.
 * No source: two forms of one tree.
 */
export function treeOf(cut: FoundCut, pieces: readonly JobPiece[]): SliceNode {
  if ('piece' in cut) {
    const piece = pieces[cut.piece] as JobPiece;
    const { length, width } = piece;
    return leaf(
      cut.piece,
      cut.turned,
      cut.turned ? width : length,
      cut.turned ? length : width,
      innerAxis(piece),
    );
  }
  const children = cut.cuts.map((child) => treeOf(child, pieces));
  const [only] = children;
  if (children.length === 1 && only !== undefined) return only;
  return group(cut.along === 'length' ? ROW : COLUMN, children);
}

/**
 * The same the other way round.
 *
 * `node`: a slicing tree. Result: plain data. Example: a row of two leaves is { along: 'length', cuts: [.., ..] }.
 */
export function foundCut(node: SliceNode): FoundCut {
  if (node.axis === LEAF) return { piece: node.piece, turned: node.turned };
  return { along: node.axis === ROW ? 'length' : 'width', cuts: node.kids.map(foundCut) };
}
