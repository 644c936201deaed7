import type { EdgeName } from '../../server/planning/project-input.ts';

/**
 * A part as it is drawn: seen on its show face, length from left to right, the front edge nearest the reader, that
 * is at the bottom. All positions are in drawing units (about one screen pixel) from the part's top left corner.
 */

export interface OutlineInput {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Front-left, front-right, back-left, back-right; 0 is square. */
  readonly cornersMm: readonly [number, number, number, number];
}

export interface OutlineRoom {
  readonly width: number;
  readonly height: number;
  /** A side is never drawn shorter than this, so that a 6 m by 20 mm edging can still be seen. */
  readonly least: number;
}

export interface PartOutline {
  readonly width: number;
  readonly height: number;
  /** Drawing units per millimetre. */
  readonly scale: number;
  /** The side that had to be drawn larger than to scale; null when both are true. */
  readonly stretched: 'length' | 'width' | null;
  readonly corners: readonly [number, number, number, number];
}

/** The largest size that fits the room, both sides to the same scale. */
export function partOutline({ lengthMm, widthMm, cornersMm }: OutlineInput, room: OutlineRoom): PartOutline {
  const scale = Math.min(room.width / lengthMm, room.height / widthMm);
  const width = Math.max(lengthMm * scale, room.least);
  const height = Math.max(widthMm * scale, room.least);
  const largest = Math.min(width, height) / 2;
  const radius = (mm: number): number => Math.min(mm * scale, largest);
  const [frontLeft, frontRight, backLeft, backRight] = cornersMm;
  return {
    width,
    height,
    scale,
    stretched: lengthMm * scale < room.least ? 'length' : widthMm * scale < room.least ? 'width' : null,
    corners: [radius(frontLeft), radius(frontRight), radius(backLeft), radius(backRight)],
  };
}

type Point = readonly [x: number, y: number];

/** A corner's arc: its middle, radius, and the angle it is centred on (degrees, clockwise from the right). */
interface Corner {
  readonly at: Point;
  readonly radius: number;
  readonly diagonal: number;
}

function cornersOf({ width, height, corners }: PartOutline): Record<'fl' | 'fr' | 'bl' | 'br', Corner> {
  const [fl, fr, bl, br] = corners;
  return {
    fl: { at: [fl, height - fl], radius: fl, diagonal: 135 },
    fr: { at: [width - fr, height - fr], radius: fr, diagonal: 45 },
    bl: { at: [bl, bl], radius: bl, diagonal: 225 },
    br: { at: [width - br, br], radius: br, diagonal: 315 },
  };
}

/** Each edge's first and last corner, the direction it faces, and whether its arcs run clockwise. */
const EDGES = {
  front: { from: 'fl', to: 'fr', faces: 90, clockwise: false },
  back: { from: 'bl', to: 'br', faces: 270, clockwise: true },
  left: { from: 'fl', to: 'bl', faces: 180, clockwise: true },
  right: { from: 'fr', to: 'br', faces: 0, clockwise: false },
} as const satisfies Record<EdgeName, object>;

/**
 * The path of one edge: its straight run with half of each rounded corner, moved outward by `offset`. Square corners
 * are left open, so that a ribbon beside the edge ends where the edge ends.
 */
export function edgePath(outline: PartOutline, edge: EdgeName, offset = 0): string {
  const { from, to, faces, clockwise } = EDGES[edge];
  const corners = cornersOf(outline);
  const sweep = clockwise ? 1 : 0;
  const start = corners[from];
  const end = corners[to];
  const straightFrom = onArc(start, faces, offset);
  const straightTo = onArc(end, faces, offset);
  const lead =
    start.radius === 0
      ? `M${point(straightFrom)}`
      : `M${point(onArc(start, start.diagonal, offset))}${arc(start.radius + offset, sweep, straightFrom)}`;
  const tail = end.radius === 0 ? '' : arc(end.radius + offset, sweep, onArc(end, end.diagonal, offset));
  return `${lead}L${point(straightTo)}${tail}`;
}

/** The closed outline, for fills and clipping. */
export function outlinePath(outline: PartOutline): string {
  return `M${outlinePoints(outline).map(point).join('L')}Z`;
}

/** Steps per rounded corner: below what the eye can tell at this size. */
const ARC_STEPS = 16;
const QUARTER = 90;

/** The outline as a polygon, clockwise from the back left. */
export function outlinePoints(outline: PartOutline): readonly Point[] {
  const { bl, br, fr, fl } = cornersOf(outline);
  return [bl, br, fr, fl].flatMap((corner) => {
    if (corner.radius === 0) return [corner.at];
    return Array.from({ length: ARC_STEPS + 1 }, (_, step) =>
      onArc(corner, corner.diagonal - QUARTER / 2 + (QUARTER * step) / ARC_STEPS, 0),
    );
  });
}

function onArc({ at, radius }: Corner, degrees: number, offset: number): Point {
  const radians = (degrees * Math.PI) / 180;
  const distance = radius + offset;
  return [at[0] + Math.cos(radians) * distance, at[1] + Math.sin(radians) * distance];
}

function arc(radius: number, sweep: 0 | 1, to: Point): string {
  return `A${short(radius)} ${short(radius)} 0 0 ${sweep} ${point(to)}`;
}

export function point([x, y]: Point): string {
  return `${short(x)} ${short(y)}`;
}

function short(value: number): string {
  return String(Math.round(value * 100) / 100);
}
