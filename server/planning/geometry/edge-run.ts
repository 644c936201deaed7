import { type Figure, figure, type WorkingInput } from '../figure.ts';
import type { EdgeName } from '../project-input.ts';
import { arcShare, neighbourAt } from './arc-share.ts';
import { QUARTER_ARC } from './constants.ts';
import type { FinishedOutline } from './edge-outline.ts';
import { CORNERS, CORNERS_OF, SIDE_OF } from './outline.ts';
import { deductedAt, type PartEdge, type PartEdges } from './part-edge.ts';

const RUN_RULE =
  'run = side - bands at its ends that are laid later - radius of each rounded corner + share of its arc x pi x radius / 2';

/**
 * Which length must the band on an edge cover?
 *
 * At a square corner the edge that is banded later covers the end of the other: the run is the full finished side,
 * less the thickness of a deducted band laid later beside it. At a rounded corner of radius r the straight run ends r
 * before the corner, and the edge takes its share of the arc, pi x r / 2.
 *
 * `outline`: finished sizes, mm. `order`: edges in the order they are banded; null when the setting cannot be used.
 * Result: mm; null when the edge is not banded, and, with a note, when something it hangs on is not known. Source:
 * banding order as published in a magazine article on plywood edges (less visible edges first); plane geometry.
 *
 * Example: 383 x 611.6 mm finished with 1 mm bands all round, short edges first: 381 mm short, 611.6 mm long.
 */
export function edgeRun(
  edge: PartEdge,
  edges: PartEdges,
  outline: FinishedOutline,
  order: readonly EdgeName[] | null,
): Figure {
  if (!edge.banded) return NOT_BANDED;
  const side = SIDE_OF[edge.name];
  const sideMm = side === 'length' ? outline.lengthMm : outline.widthMm;
  const inputs: WorkingInput[] = [
    { name: `finished ${side}`, value: sideMm, unit: 'mm', from: `${outline.path}/${side}Mm` },
  ];
  const notes: string[] = [];
  if (edge.band === null) notes.push(`The banding on the ${edge.name} edge cannot be used.`);
  if (sideMm === null) notes.push(`The finished ${side} is not known.`);
  if (outline.corners === null) notes.push('The corners are not known.');
  if (order === null) notes.push('The banding order in the settings cannot be used.');
  if (notes.length > 0 || sideMm === null || outline.corners === null || order === null)
    return figure(null, 'mm', { rule: RUN_RULE, inputs, notes });

  let runMm: number | null = sideMm;
  for (const place of CORNERS_OF[edge.name]) {
    const radiusMm = outline.corners[place] as number;
    const neighbour = neighbourAt(edge, place, edges);
    if (radiusMm > 0) {
      const share = arcShare(edge, place, edges);
      runMm = runMm === null ? null : runMm + radiusMm * (share * QUARTER_ARC - 1);
      inputs.push(
        { name: `radius ${CORNERS[place]?.name}`, value: radiusMm, unit: 'mm' },
        { name: 'share of its arc', value: share, unit: 'ratio' },
      );
    } else if (neighbour.banded && order.indexOf(neighbour.name) > order.indexOf(edge.name)) {
      const deductedMm = deductedAt(neighbour);
      runMm = runMm === null || deductedMm === null ? null : runMm - deductedMm;
      if (deductedMm === null) notes.push(`The band on the ${neighbour.name} edge is not known well enough.`);
      if (deductedMm !== 0)
        inputs.push({
          name: `${neighbour.name} band, laid later`,
          value: deductedMm,
          unit: 'mm',
          ...(neighbour.band === null
            ? {}
            : { source: `${neighbour.band.product.name}, ${neighbour.band.source}` }),
        });
    }
  }
  const rule = inputs.length === 1 ? `run = finished ${side}; nothing at its ends shortens it` : RUN_RULE;
  return figure(runMm, 'mm', { rule, inputs, ...(notes.length === 0 ? {} : { notes }) });
}

const NOT_BANDED = figure(null, 'mm', { rule: 'the edge is not banded', inputs: [] });
