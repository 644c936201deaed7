import { outlinePoints, type PartOutline } from './part-outline.ts';

/** How deep the folded corner reaches in along its diagonal: part of the smaller side, within these bounds. */
const DEPTH_SHARE = 0.3;
const LEAST_DEPTH = 5;
const MOST_DEPTH = 17;

type Point = readonly [x: number, y: number];

export interface DogEar {
  /** The corner that is folded away. */
  readonly folded: readonly Point[];
  /** The same piece turned over onto the show face: what is seen of the back. */
  readonly flap: readonly Point[];
}

/**
 * The back-right corner folded over, so that a little of the back face shows. Works on any outline, round ones too:
 * the fold runs across the diagonal, at a set depth from the outermost point there.
 */
export function dogEar(outline: PartOutline): DogEar {
  const points = outlinePoints(outline);
  const depth = Math.min(
    MOST_DEPTH,
    Math.max(LEAST_DEPTH, DEPTH_SHARE * Math.min(outline.width, outline.height)),
  );
  const fold = Math.max(...points.map(reach)) - depth;
  const folded = beyond(points, fold);
  return { folded, flap: folded.map((corner) => mirrored(corner, fold)) };
}

/** How far a point lies towards the back-right. */
function reach([x, y]: Point): number {
  return (x - y) / Math.SQRT2;
}

function mirrored([x, y]: Point, fold: number): Point {
  const past = reach([x, y]) - fold;
  return [x - Math.SQRT2 * past, y + Math.SQRT2 * past];
}

/** The part of a convex polygon past the fold (Sutherland and Hodgman's clipping against one line). */
function beyond(points: readonly Point[], fold: number): Point[] {
  return points.flatMap((current, index) => {
    const previous = points[(index + points.length - 1) % points.length] ?? current;
    const [was, is] = [reach(previous) - fold, reach(current) - fold];
    const crossing = was * is < 0 ? [between(previous, current, was / (was - is))] : [];
    return is >= 0 ? [...crossing, current] : crossing;
  });
}

function between(a: Point, b: Point, share: number): Point {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}
