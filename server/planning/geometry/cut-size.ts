import { type Figure, figure, type WorkingInput } from '../figure.ts';
import { deductedAt, type PartEdge } from './part-edge.ts';

/**
 * To what size is a part cut along one axis, so that it has its finished size once banded?
 *
 * cut = finished - thickness of each deducted band at the two ends of the axis
 *
 * `finished`: mm, with its path. `ends`: the edges at both ends of the axis: left and right for the length, front
 * and back for the width. Result: mm, which may come out at zero or below; null where a deduction is not known.
 * Source: woodworking practice as published, e.g. a shelf finishing 9-3/4 in deep with a 3/4 in front strip is cut
 * at 9 in.
 *
 * Example: 600 mm with 2 mm deducted at both ends is cut at 596 mm.
 */
export function cutSize(
  axis: 'length' | 'width',
  finished: { readonly mm: number | null; readonly path: string },
  ends: readonly [PartEdge, PartEdge],
): Figure {
  const inputs: WorkingInput[] = [
    { name: `finished ${axis}`, value: finished.mm, unit: 'mm', from: finished.path },
  ];
  const notes: string[] = [];
  let cutMm = finished.mm;
  for (const edge of ends) {
    if (!edge.banded) continue;
    const deductedMm = deductedAt(edge);
    if (edge.band === null) notes.push(`The banding on the ${edge.name} edge cannot be used.`);
    else
      inputs.push({
        name: `deducted at the ${edge.name} edge`,
        value: deductedMm,
        unit: 'mm',
        source: `${edge.band.product.name}, ${edge.band.source}`,
      });
    cutMm = cutMm === null || deductedMm === null ? null : cutMm - deductedMm;
  }
  if (finished.mm === null) notes.push(`The finished ${axis} is not known.`);
  const rule =
    inputs.length + notes.length === 1
      ? `cut ${axis} = finished ${axis}: no band on the ${ends[0].name} and ${ends[1].name} edges`
      : `cut ${axis} = finished ${axis} - deducted bands on the ${ends[0].name} and ${ends[1].name} edges`;
  return figure(cutMm, 'mm', { rule, inputs, ...(notes.length === 0 ? {} : { notes }) });
}
