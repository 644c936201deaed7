/**
 * A selected range of a sheet: the anchor is where it began (and where typing goes), the head is the corner that
 * moves. Rows and columns count from 0 as displayed. Everything here is a pure function of its arguments.
 */

export interface CellAt {
  readonly row: number;
  readonly column: number;
}

export interface CellRange {
  readonly anchor: CellAt;
  readonly head: CellAt;
}

/** Both ends belong to it. */
export interface Rectangle {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** How many rows and columns the sheet shows. */
export interface SheetSize {
  readonly rows: number;
  readonly columns: number;
}

export function singleCell(cell: CellAt): CellRange {
  return { anchor: cell, head: cell };
}

export function rectangleOf({ anchor, head }: CellRange): Rectangle {
  return {
    top: Math.min(anchor.row, head.row),
    bottom: Math.max(anchor.row, head.row),
    left: Math.min(anchor.column, head.column),
    right: Math.max(anchor.column, head.column),
  };
}

export function holds(rectangle: Rectangle, cell: CellAt): boolean {
  return (
    cell.row >= rectangle.top &&
    cell.row <= rectangle.bottom &&
    cell.column >= rectangle.left &&
    cell.column <= rectangle.right
  );
}

export function isSingle(rectangle: Rectangle): boolean {
  return rectangle.top === rectangle.bottom && rectangle.left === rectangle.right;
}

/** The range with its head moved; it stops at the edges of the sheet. */
export function moveHead(range: CellRange, rows: number, columns: number, size: SheetSize): CellRange {
  return {
    anchor: range.anchor,
    head: {
      row: between(range.head.row + rows, size.rows - 1),
      column: between(range.head.column + columns, size.columns - 1),
    },
  };
}

/** The range cut to a sheet that has become smaller; null when nothing of the sheet is left. */
export function fitRange(range: CellRange, size: SheetSize): CellRange | null {
  if (size.rows === 0 || size.columns === 0) return null;
  const inside = (cell: CellAt): CellAt => ({
    row: between(cell.row, size.rows - 1),
    column: between(cell.column, size.columns - 1),
  });
  return { anchor: inside(range.anchor), head: inside(range.head) };
}

/** Whole rows, keeping the anchor's row. */
export function wholeRows(range: CellRange, size: SheetSize): CellRange {
  return {
    anchor: { row: range.anchor.row, column: 0 },
    head: { row: range.head.row, column: size.columns - 1 },
  };
}

export function wholeColumns(range: CellRange, size: SheetSize): CellRange {
  return {
    anchor: { row: 0, column: range.anchor.column },
    head: { row: size.rows - 1, column: range.head.column },
  };
}

export function sameRange(a: CellRange | null, b: CellRange | null): boolean {
  if (a === null || b === null) return a === b;
  return sameCell(a.anchor, b.anchor) && sameCell(a.head, b.head);
}

export function sameCell(a: CellAt, b: CellAt): boolean {
  return a.row === b.row && a.column === b.column;
}

function between(value: number, last: number): number {
  return Math.max(0, Math.min(last, value));
}
