import { formatLength } from '../display/format-length.ts';
import type { Problem } from '../problem.ts';
import { EDGE_NAMES, type PartInput } from '../project-input.ts';
import { BAND_WIDTH_TOLERANCE_MM } from './constants.ts';
import { CORNERS, type CornerRadii, EDGE_FIELD } from './outline.ts';
import type { PartContext } from './part-context.ts';
import type { PartEdge, PartEdges } from './part-edge.ts';
import { partProblem } from './part-problem.ts';

/**
 * Which bands on a part are doubtful: too narrow for it, of unknown width or thickness, or changing at a rounded
 * corner?
 *
 * A band should be as wide as the part is thick and the trim allowance at each face. `thicknessMm`: of the part, mm,
 * null where not known. Result: problems, each at its cell; one per product for what the product lacks. Source of the
 * width rule: magazine article on plywood edges, about 1/16 in over at each face, the strip 1/8 in wider in all.
 *
 * Example: 13/16 in tape on a 3/4 in edge leaves 1/32 in at each face: a warning.
 */
export function bandProblems(
  row: PartInput,
  edges: PartEdges,
  thicknessMm: number | null,
  corners: CornerRadii | null,
  context: PartContext,
): Problem[] {
  const problems: Problem[] = [];
  const named = new Set<string>();
  // A round part has one edge, which its front cell describes.
  for (const name of row.shape === 'round' ? (['front'] as const) : EDGE_NAMES) {
    const edge = edges[name];
    if (edge.band === null) continue;
    if (!named.has(edge.treatment)) problems.push(...whatTheProductLacks(row, edge));
    named.add(edge.treatment);
    problems.push(...tooNarrow(row, edge, thicknessMm, context));
  }
  if (row.shape === 'round' || corners === null) return problems;
  for (const [place, corner] of CORNERS.entries()) {
    const [before, after] = [edges[corner.before], edges[corner.after]];
    if (corners[place] === 0 || before.treatment === after.treatment) continue;
    if (!before.banded && !after.banded) continue;
    problems.push(
      partProblem(
        row,
        corner.field,
        {
          code: 'corner-band-mismatch',
          message: `The rounded ${corner.name} corner joins a ${before.name} edge and a ${after.name} edge that are banded differently.`,
          wayOut: 'Give both edges the same banding, or make the corner square.',
        },
        'warning',
      ),
    );
  }
  return problems;
}

function whatTheProductLacks(row: PartInput, { name, band }: PartEdge): Problem[] {
  if (band === null) return [];
  const problems: Problem[] = [];
  if (band.deductedMm === null)
    problems.push(
      partProblem(row, EDGE_FIELD[name], {
        code: 'band-thickness-unknown',
        message: `The thickness of "${band.product.name}" is not known, so neither is the cut size.`,
        wayOut: 'Measure the band and enter it, or set in the catalogue that it is not deducted.',
      }),
    );
  if (band.widthMm === null)
    problems.push(
      partProblem(
        row,
        EDGE_FIELD[name],
        {
          code: 'band-width-unknown',
          message: `The width of "${band.product.name}" is not known, so it cannot be told whether it covers the edge.`,
          wayOut: 'Enter the width of the band in the catalogue.',
        },
        'warning',
      ),
    );
  return problems;
}

function tooNarrow(
  row: PartInput,
  { name, band }: PartEdge,
  thicknessMm: number | null,
  { settings, trimAllowanceMm }: PartContext,
): Problem[] {
  const widthMm = band?.widthMm ?? null;
  if (band === null || widthMm === null || thicknessMm === null || trimAllowanceMm === null) return [];
  const neededMm = thicknessMm + 2 * trimAllowanceMm;
  if (widthMm >= neededMm - BAND_WIDTH_TOLERANCE_MM) return [];
  const covers = widthMm >= thicknessMm;
  const [width, thickness] = [formatLength(widthMm, settings), formatLength(thicknessMm, settings)];
  return [
    partProblem(
      row,
      EDGE_FIELD[name],
      {
        code: 'band-too-narrow',
        message: covers
          ? `"${band.product.name}" is ${width} wide, which leaves less than ${formatLength(trimAllowanceMm, settings)} to trim at each face of a part ${thickness} thick.`
          : `"${band.product.name}" is ${width} wide and does not cover a part ${thickness} thick.`,
        wayOut: `Choose a band of at least ${formatLength(neededMm, settings)}.`,
      },
      covers ? 'warning' : 'error',
    ),
  ];
}
