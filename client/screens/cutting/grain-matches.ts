import type { CutNode } from '../../../server/planning/plan-output.ts';

/** The grain matches cut from one layout, each with its parts in their order, one for each piece. */
export function grainMatches(
  node: CutNode,
): readonly { readonly name: string; readonly partIds: readonly string[] }[] {
  if (node.type !== 'split') return [];
  if (node.match === undefined) return node.children.flatMap(grainMatches);
  return [{ name: node.match, partIds: node.children.flatMap(partsOf) }];
}

function partsOf(node: CutNode): readonly string[] {
  if (node.type === 'part') return [node.partId];
  return node.type === 'split' ? node.children.flatMap(partsOf) : [];
}
