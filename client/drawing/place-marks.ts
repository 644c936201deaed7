export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface MarkedLine {
  readonly text: string;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

export interface Mark {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

const RADII = [7.5, 6] as const;
/** Places tried along a line, as shares of it. */
const SHARES = [0, 1, 0.25, 0.75, 0.5, 0.125, 0.875, 0.375, 0.625, 0.0625, 0.9375] as const;

/**
 * A numbered mark on each line, clear of the texts and of the other marks where there is such a place; else clear of
 * the other marks alone; else none, and the list under the drawing has to do.
 */
export function placeMarks(lines: readonly MarkedLine[], texts: readonly Box[], room: Box): readonly Mark[] {
  const placed: Mark[] = [];
  for (const line of lines) {
    const mark = place(line, texts, placed, room) ?? place(line, [], placed, room);
    if (mark !== null) placed.push(mark);
  }
  return placed;
}

function place(line: MarkedLine, texts: readonly Box[], placed: readonly Mark[], room: Box): Mark | null {
  const length = Math.hypot(line.x2 - line.x1, line.y2 - line.y1);
  for (const base of RADII) {
    const radius = base + (line.text.length > 2 ? 1.5 : 0);
    for (const share of SHARES) {
      const along = length === 0 ? 0 : (radius + 2 + share * Math.max(0, length - 2 * radius - 4)) / length;
      const x = line.x1 + (line.x2 - line.x1) * along;
      const y = line.y1 + (line.y2 - line.y1) * along;
      const mark = {
        text: line.text,
        x: Math.min(Math.max(x, room.x + radius), room.x + room.width - radius),
        y: Math.min(Math.max(y, room.y + radius), room.y + room.height - radius),
        radius,
      };
      if (texts.every((box) => clear(mark, box)) && placed.every((other) => apart(mark, other))) return mark;
    }
  }
  return null;
}

function clear({ x, y, radius }: Mark, box: Box): boolean {
  return (
    x + radius <= box.x ||
    x - radius >= box.x + box.width ||
    y + radius <= box.y ||
    y - radius >= box.y + box.height
  );
}

function apart(a: Mark, b: Mark): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) >= a.radius + b.radius;
}
