import { type Figure, figure, type WorkingInput } from '../figure.ts';
import { arcShare } from './arc-share.ts';
import { QUARTER_ARC } from './constants.ts';
import { CORNERS, CORNERS_OF, type CornerRadii, SIDE_OF } from './outline.ts';
import type { PartEdge, PartEdges } from './part-edge.ts';

/** Finished size of a part, mm; null where not known. Corners are null where a radius is unreadable or too large. */
export interface FinishedOutline {
  readonly lengthMm: number | null;
  readonly widthMm: number | null;
  readonly corners: CornerRadii | null;
  /** `parts/<id>` */
  readonly path: string;
}

/**
 * How much of the part's outline belongs to one edge?
 *
 * outline = side - radius of each rounded corner + its share of each corner's arc, pi x radius / 2
 *
 * `outline`: finished sizes, mm. Result: mm, null where a size is not known. The share is half; a corner that joins
 * a banded and an unbanded edge goes wholly with the band. Source: plane geometry, exact.
 *
 * Example: a front edge of 600 mm with one corner of 50 mm is 600 - 50 + 39.27 = 589.27 mm.
 */
export function edgeOutline(edge: PartEdge, edges: PartEdges, outline: FinishedOutline): Figure {
  const side = SIDE_OF[edge.name];
  const sideMm = side === 'length' ? outline.lengthMm : outline.widthMm;
  const inputs: WorkingInput[] = [
    { name: `finished ${side}`, value: sideMm, unit: 'mm', from: `${outline.path}/${side}Mm` },
  ];
  if (sideMm === null || outline.corners === null)
    return figure(null, 'mm', {
      rule: OUTLINE_RULE,
      inputs,
      notes: [sideMm === null ? `The finished ${side} is not known.` : 'The corners are not known.'],
    });
  let outlineMm = sideMm;
  for (const place of CORNERS_OF[edge.name]) {
    const radiusMm = outline.corners[place] as number;
    if (radiusMm === 0) continue;
    const share = arcShare(edge, place, edges);
    outlineMm += radiusMm * (share * QUARTER_ARC - 1);
    inputs.push(
      { name: `radius ${CORNERS[place]?.name}`, value: radiusMm, unit: 'mm' },
      { name: `share of its arc`, value: share, unit: 'ratio' },
    );
  }
  return figure(outlineMm, 'mm', {
    rule: inputs.length === 1 ? `outline = finished ${side}` : OUTLINE_RULE,
    inputs,
  });
}

const OUTLINE_RULE = 'outline = side - radius of each rounded corner + share of its arc x pi x radius / 2';
