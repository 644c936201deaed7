import { placeCost } from './place-cost.ts';
import { COLUMN, group, ROW, type SliceNode } from './slicing-tree.ts';

/** Brings the children of the target that overSomeCost reckoned with together, and lays the item over them. */
export function layOverSome(target: SliceNode, item: SliceNode): void {
  const row = target.axis === ROW;
  const roomLength = target.length + target.growLength;
  const roomWidth = target.width + target.growWidth;
  const some = kidsUnder(target, item, roomLength, roomWidth);
  const rest = target.kids.filter((kid) => !some.includes(kid));
  const under = group(row ? COLUMN : ROW, [group(row ? ROW : COLUMN, some), item]);
  target.kids.length = 0;
  target.kids.push(...rest, under);
}

/**
 * Cost of laying a by b over some children of a row (for a column: sizes exchanged), a along the row. `growAlong`: how much
 * the row may grow; `room`: how wide it may be.
 */
export function overSomeCost(node: SliceNode, a: number, b: number, growAlong: number, room: number): number {
  const most = room - b;
  const row = node.axis === ROW;
  let fitting = 0;
  for (const kid of node.kids) if ((row ? kid.width : kid.length) <= most) fitting++;
  if (fitting < 2) return Infinity;
  let along = 0;
  let across = 0;
  let taken = 0;
  let last = Infinity;
  let lastAt = -1;
  // Widest first, ties in order, until they are as long as the item.
  while (along < a && taken < fitting) {
    let next = -1;
    let nextAcross = -1;
    for (let at = 0; at < node.kids.length; at++) {
      const kid = node.kids[at] as SliceNode;
      const size = row ? kid.width : kid.length;
      if (size > most || size > last || (size === last && at <= lastAt) || size <= nextAcross) continue;
      next = at;
      nextAcross = size;
    }
    if (next < 0) break;
    const kid = node.kids[next] as SliceNode;
    along += row ? kid.length : kid.width;
    if (taken === 0) across = nextAcross;
    last = nextAcross;
    lastAt = next;
    taken++;
  }
  if (taken < 2 || taken === node.kids.length || a - along > growAlong) return Infinity;
  const mismatch = along > a ? (along - a) * b : (a - along) * across;
  const leftAlong = Math.max(0, growAlong - Math.max(0, a - along));
  return placeCost(mismatch, a, b, leftAlong, most - across);
}

/** The children that overSomeCost reckoned with. */
function kidsUnder(node: SliceNode, item: SliceNode, roomLength: number, roomWidth: number): SliceNode[] {
  const row = node.axis === ROW;
  const most = row ? roomWidth - item.width : roomLength - item.length;
  const need = row ? item.length : item.width;
  const size = (kid: SliceNode): number => (row ? kid.width : kid.length);
  const sorted = node.kids.filter((kid) => size(kid) <= most).sort((left, right) => size(right) - size(left));
  const chosen: SliceNode[] = [];
  let along = 0;
  for (const kid of sorted) {
    if (along >= need) break;
    chosen.push(kid);
    along += row ? kid.length : kid.width;
  }
  return chosen;
}
