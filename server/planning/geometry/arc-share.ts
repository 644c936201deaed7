import { CORNERS } from './outline.ts';
import type { PartEdge, PartEdges } from './part-edge.ts';

/**
 * How much of a rounded corner's arc goes with this edge rather than with its neighbour?
 *
 * `corner`: place in `CORNERS`. Result: 0, 0.5 or 1, a share. Where one of the two is banded, the band goes round
 * the whole corner; else each has half. A rule of ours: a band cannot end in the middle of an arc against bare wood.
 *
 * Example: a banded front beside a bare left edge takes the whole corner.
 */
export function arcShare(edge: PartEdge, corner: number, edges: PartEdges): number {
  const neighbour = neighbourAt(edge, corner, edges);
  if (edge.banded === neighbour.banded) return 0.5;
  return edge.banded ? 1 : 0;
}

/**
 * Which edge meets this one at a corner? `corner`: place in `CORNERS`. No units, no source.
 *
 * Example: the left edge meets the front edge at the front left corner.
 */
export function neighbourAt(edge: PartEdge, corner: number, edges: PartEdges): PartEdge {
  const joined = CORNERS[corner];
  if (joined === undefined) throw new RangeError(`neighbourAt: corner must be 0 to 3, got ${corner}`);
  return edges[joined.before === edge.name ? joined.after : joined.before];
}
