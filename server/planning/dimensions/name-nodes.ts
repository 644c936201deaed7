import type { ExpressionTree } from './expression-tree.ts';

export type NameNode = ExpressionTree & { readonly type: 'name' };

/**
 * Which names does a calculation mention, and where? `tree`: as parsed. Result: every mention in the order written,
 * with its place in characters behind the equals sign; names of functions and units are none. No units, no source.
 *
 * Example: `ply + 2*ply` mentions ply at 0 and at 8.
 */
export function nameNodes(tree: ExpressionTree): readonly NameNode[] {
  switch (tree.type) {
    case 'name':
      return [tree];
    case 'binary':
      return [...nameNodes(tree.left), ...nameNodes(tree.right)];
    case 'negative':
      return nameNodes(tree.operand);
    case 'call':
      return tree.operands.flatMap(nameNodes);
    default:
      return [];
  }
}
