import type { Figure } from '../../server/planning/figure.ts';

/**
 * The figure that a path leads to within an answer: names lead into objects, ids to the row of a list that has them. An id
 * may hold a slash, so it is encoded in the path. Null when there is no such figure.
 */
export function figureIn(answer: unknown, steps: readonly string[]): Figure | null {
  let at: unknown = answer;
  for (const step of steps) {
    const name = decodeURIComponent(step);
    at = Array.isArray(at)
      ? at.find((row: { readonly id?: unknown }) => row.id === name)
      : (at as Record<string, unknown> | null | undefined)?.[name];
  }
  return isFigure(at) ? at : null;
}

function isFigure(value: unknown): value is Figure {
  return typeof value === 'object' && value !== null && 'working' in value && 'unit' in value;
}
