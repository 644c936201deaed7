import { formatLength } from '../display/format-length.ts';
import type { Problem } from '../problem.ts';
import type { PartInput } from '../project-input.ts';
import { CORNER_TOLERANCE_MM, ROUND_TOLERANCE_MM } from './constants.ts';
import { CORNERS, CORNERS_OF, type CornerRadii, EDGE_LOOP, SIDE_OF } from './outline.ts';
import type { PartContext } from './part-context.ts';
import { cellProblem, partProblem } from './part-problem.ts';

export interface PartCorners {
  /** Radii in mm; null where one is unreadable or too large, or a round part is not as wide as long. */
  readonly corners: CornerRadii | null;
  readonly problems: readonly Problem[];
}

/**
 * How are a part's corners rounded?
 *
 * `row`: radii as typed; empty is a square corner. `lengthMm`, `widthMm`: finished sizes, mm, null where not known.
 * Result: radii in mm. A round part is a square whose four corners have half its diameter as radius; its length and
 * width must agree, and its radius cells are not read. Two corners of a side may not overrun it; the larger of the
 * two is then the problem. Source: plane geometry.
 *
 * Example: 50 mm at both front corners of a 600 mm front leaves 500 mm straight.
 */
export function partCorners(
  row: PartInput,
  lengthMm: number | null,
  widthMm: number | null,
  context: PartContext,
): PartCorners {
  if (row.shape === 'round') return roundCorners(row, lengthMm, widthMm, context);
  const radii: (number | null)[] = [];
  const problems: Problem[] = [];
  for (const { field } of CORNERS) {
    const text = row[field];
    if (text === '') {
      radii.push(0);
      continue;
    }
    const { value, refusal } = context.readRadius(text);
    radii.push(value);
    problems.push(...cellProblem(row, field, refusal));
  }
  if (radii.some((radius) => radius === null)) return { corners: null, problems };
  const corners = radii as unknown as CornerRadii;

  const tooLarge = new Set<number>();
  for (const edge of EDGE_LOOP) {
    const sideMm = SIDE_OF[edge] === 'length' ? lengthMm : widthMm;
    const [one, other] = CORNERS_OF[edge];
    const [first, second] = [corners[one] as number, corners[other] as number];
    if (sideMm !== null && first + second > sideMm + CORNER_TOLERANCE_MM)
      tooLarge.add(first >= second ? one : other);
  }
  if (tooLarge.size === 0) return { corners, problems };
  for (const place of tooLarge) problems.push(cornerTooLarge(row, place, corners, context));
  return { corners: null, problems };
}

function roundCorners(
  row: PartInput,
  lengthMm: number | null,
  widthMm: number | null,
  { settings }: PartContext,
): PartCorners {
  if (lengthMm === null || widthMm === null) return { corners: null, problems: [] };
  if (Math.abs(lengthMm - widthMm) <= ROUND_TOLERANCE_MM) {
    const radiusMm = Math.min(lengthMm, widthMm) / 2;
    return { corners: [radiusMm, radiusMm, radiusMm, radiusMm], problems: [] };
  }
  const fault = {
    code: 'round-not-square',
    message: `A round part is as wide as it is long, but this one is ${formatLength(lengthMm, settings)} by ${formatLength(widthMm, settings)}.`,
    wayOut: 'Type the diameter as length and as width, or make the part a rectangle.',
  } as const;
  return { corners: null, problems: [partProblem(row, 'width', fault)] };
}

function cornerTooLarge(
  row: PartInput,
  place: number,
  corners: CornerRadii,
  { settings }: PartContext,
): Problem {
  const corner = CORNERS[place] as (typeof CORNERS)[number];
  const radiusMm = corners[place] as number;
  return partProblem(row, corner.field, {
    code: 'corner-too-large',
    message: `A radius of ${formatLength(radiusMm, settings)} at the ${corner.name} corner does not fit the part with its other corners.`,
    wayOut: 'Type a smaller radius: two corners of one side may take up no more than the side.',
  });
}
