import type { Figure } from '../planning/figure.ts';
import { isFigure } from './strip-workings.ts';

/**
 * The figure at a path such as `parts/12/cutLengthMm`: names of fields, and ids where a field is a list. A step may
 * be percent-encoded, and a plus in it may have become a space, as it does in an address that was not encoded.
 * Undefined when there is no figure at the path.
 */
export function workingAt(plan: object, path: string): Figure | undefined {
  let place: unknown = plan;
  for (const step of path.split('/')) {
    if (isFigure(place)) return undefined;
    place = inside(place, step) ?? inside(place, decoded(step)) ?? inside(place, step.replaceAll(' ', '+'));
  }
  return isFigure(place) ? place : undefined;
}

function inside(place: unknown, step: string): unknown {
  if (Array.isArray(place)) return place.find((item: { readonly id?: unknown }) => item.id === step);
  if (typeof place !== 'object' || place === null || !Object.hasOwn(place, step)) return undefined;
  return (place as Record<string, unknown>)[step];
}

function decoded(step: string): string {
  try {
    return decodeURIComponent(step);
  } catch {
    return step;
  }
}
