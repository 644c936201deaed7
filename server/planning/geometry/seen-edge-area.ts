import { type Figure, figure } from '../figure.ts';
import type { EdgePlan } from '../plan-output.ts';
import { MM2_PER_M2 } from './constants.ts';
import type { PartEdges } from './part-edge.ts';

/**
 * How large are the edges of a part that are seen, and so get its finish?
 *
 * area = outline of the seen edges, banded or bare, x thickness
 *
 * `plans`: outline per edge, mm. `thicknessMm`: mm. `path`: `parts/<id>`. Result: m2; 0 without a seen edge; null
 * where an outline or the thickness is not known. No source: a definition.
 *
 * Example: a shelf with one seen edge of 600 mm in 18 mm ply: 0.0108 m2.
 */
export function seenEdgeArea(
  edges: PartEdges,
  plans: readonly EdgePlan[],
  thicknessMm: number | null,
  path: string,
): Figure {
  const seen = plans.filter(({ id }) => edges[id].seen);
  if (seen.length === 0) return NONE_SEEN;
  let outlineMm: number | null = 0;
  for (const { outlineMm: one } of seen)
    outlineMm = outlineMm === null || one.value === null ? null : outlineMm + one.value;
  const areaM2 = outlineMm === null || thicknessMm === null ? null : (outlineMm * thicknessMm) / MM2_PER_M2;
  return figure(areaM2, 'm2', {
    rule: 'seen edges = outline of the banded and bare edges x thickness',
    inputs: [
      ...seen.map(({ id, outlineMm: one }) => ({
        name: `outline of the ${id} edge`,
        value: one.value,
        unit: 'mm' as const,
        from: `${path}/edges/${id}/outlineMm`,
      })),
      { name: 'thickness', value: thicknessMm, unit: 'mm', from: `${path}/thicknessMm` },
    ],
    ...(areaM2 === null ? { notes: ['An outline or the thickness is not known.'] } : {}),
  });
}

const NONE_SEEN = figure(0, 'm2', { rule: 'no edge is seen', inputs: [] });
