import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitRange,
  holds,
  isSingle,
  moveHead,
  rectangleOf,
  singleCell,
  wholeColumns,
  wholeRows,
} from '../../../client/grid/range-model.ts';

const size = { rows: 10, columns: 6 };
const at = (row: number, column: number): { row: number; column: number } => ({ row, column });

describe('the selected range', () => {
  it('is the rectangle between its two ends, whichever way it was drawn', () => {
    const drawn = { anchor: at(5, 4), head: at(2, 1) };
    expect(rectangleOf(drawn)).toEqual({ top: 2, left: 1, bottom: 5, right: 4 });
    expect(rectangleOf({ anchor: drawn.head, head: drawn.anchor })).toEqual(rectangleOf(drawn));
  });

  it('counts both ends in and their neighbours out', () => {
    const rectangle = rectangleOf({ anchor: at(2, 1), head: at(5, 4) });
    expect([at(2, 1), at(5, 4), at(3, 2)].map((cell) => holds(rectangle, cell))).toEqual([true, true, true]);
    expect([at(1, 1), at(6, 4), at(3, 5), at(3, 0)].map((cell) => holds(rectangle, cell))).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it('stops at the edges of the sheet however far the head is sent', () => {
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }), (rows, columns) => {
        const { anchor, head } = moveHead(singleCell(at(3, 3)), rows, columns, size);
        expect(anchor).toEqual(at(3, 3));
        expect(head.row).toBe(Math.max(0, Math.min(9, 3 + rows)));
        expect(head.column).toBe(Math.max(0, Math.min(5, 3 + columns)));
      }),
    );
    expect(moveHead(singleCell(at(3, 3)), 0, Number.POSITIVE_INFINITY, size).head).toEqual(at(3, 5));
  });

  it('keeps its anchor when it grows to whole rows or whole columns', () => {
    const range = { anchor: at(4, 2), head: at(6, 3) };
    expect(rectangleOf(wholeRows(range, size))).toEqual({ top: 4, left: 0, bottom: 6, right: 5 });
    expect(rectangleOf(wholeColumns(range, size))).toEqual({ top: 0, left: 2, bottom: 9, right: 3 });
  });

  it('shrinks with the sheet and is gone when the sheet is empty', () => {
    expect(fitRange({ anchor: at(4, 2), head: at(9, 5) }, { rows: 6, columns: 4 })).toEqual({
      anchor: at(4, 2),
      head: at(5, 3),
    });
    expect(fitRange(singleCell(at(0, 0)), { rows: 0, columns: 4 })).toBeNull();
  });

  it('is single only when both ends are one cell', () => {
    expect(isSingle(rectangleOf(singleCell(at(1, 1))))).toBe(true);
    expect(isSingle(rectangleOf({ anchor: at(1, 1), head: at(1, 2) }))).toBe(false);
  });
});
