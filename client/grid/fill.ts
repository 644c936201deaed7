import type { CellAt, Rectangle } from './range-model.ts';

/** One cell that takes the content of another. */
export interface Copy {
  readonly from: CellAt;
  readonly to: CellAt;
}

/** The cells a fill takes its content from, those it fills, and the way it goes. */
export interface Fill {
  readonly source: Rectangle;
  readonly target: Rectangle;
  readonly along: 'down' | 'across';
}

/** Ctrl+D: every row of the range takes the first; a single row takes the one above it. Null at the top of the sheet. */
export function fillDown(range: Rectangle): Fill | null {
  const source = range.top === range.bottom ? range.top - 1 : range.top;
  if (source < 0) return null;
  return {
    source: { ...range, top: source, bottom: source },
    target: { ...range, top: source + 1 },
    along: 'down',
  };
}

/** Ctrl+R: every column of the range takes the first; a single column takes the one left of it. */
export function fillRight(range: Rectangle): Fill | null {
  const source = range.left === range.right ? range.left - 1 : range.left;
  if (source < 0) return null;
  return {
    source: { ...range, left: source, right: source },
    target: { ...range, left: source + 1 },
    along: 'across',
  };
}

/**
 * Dragging the fill handle from the range to a cell: the range grows in the direction in which the pointer went
 * further (down, up, right or left), and the new cells go on with the range's content.
 */
export function fillTo(range: Rectangle, pointer: CellAt): Fill | null {
  const down = pointer.row - range.bottom;
  const up = range.top - pointer.row;
  const right = pointer.column - range.right;
  const left = range.left - pointer.column;
  const furthest = Math.max(down, up, right, left);
  if (furthest <= 0) return null;
  if (furthest === down)
    return {
      source: range,
      target: { ...range, top: range.bottom + 1, bottom: pointer.row },
      along: 'down',
    };
  if (furthest === up)
    return { source: range, target: { ...range, top: pointer.row, bottom: range.top - 1 }, along: 'down' };
  const target =
    furthest === right
      ? { ...range, left: range.right + 1, right: pointer.column }
      : { ...range, left: pointer.column, right: range.left - 1 };
  return { source: range, target, along: 'across' };
}

/** A block of clipboard text laid on the range: one cell fills it, a block that divides it is repeated, else it is laid once from the corner. */
export function layBlock(
  block: readonly (readonly string[])[],
  range: Rectangle,
): { readonly to: CellAt; readonly text: string }[] {
  const height = block.length;
  const width = Math.max(0, ...block.map((row) => row.length));
  if (height === 0 || width === 0) return [];
  const rows = range.bottom - range.top + 1;
  const columns = range.right - range.left + 1;
  const tiles = rows % height === 0 && columns % width === 0;
  const cells: { to: CellAt; text: string }[] = [];
  for (let row = 0; row < (tiles ? rows : height); row += 1)
    for (let column = 0; column < (tiles ? columns : width); column += 1) {
      const text = block[row % height]?.[column % width];
      if (text !== undefined) cells.push({ to: { row: range.top + row, column: range.left + column }, text });
    }
  return cells;
}

/** Repeats the source's pattern over the target, in step with the source. */
export function copiesOf({ source, target }: Fill): Copy[] {
  const height = source.bottom - source.top + 1;
  const width = source.right - source.left + 1;
  const copies: Copy[] = [];
  for (let row = target.top; row <= target.bottom; row += 1)
    for (let column = target.left; column <= target.right; column += 1)
      copies.push({
        from: {
          row: source.top + modulo(row - source.top, height),
          column: source.left + modulo(column - source.left, width),
        },
        to: { row, column },
      });
  return copies;
}

function modulo(value: number, size: number): number {
  return ((value % size) + size) % size;
}
