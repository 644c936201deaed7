import { describe, expect, it } from 'vitest';
import { neighbourCell, nextTypedCell } from '../../../client/grid/next-cell.ts';

const size = { rows: 3, columns: 4 };
/** Column 0 is the row's number and column 2 is computed. */
const typed = ({ column }: { column: number }): boolean => column === 1 || column === 3;

describe('the next cell to type in', () => {
  it('is the next typed column, passing over computed ones', () => {
    expect(nextTypedCell({ row: 0, column: 1 }, 1, size, typed)).toEqual({ row: 0, column: 3 });
    expect(nextTypedCell({ row: 0, column: 3 }, -1, size, typed)).toEqual({ row: 0, column: 1 });
  });

  it('goes on to the next row at the end and to the row before at the start', () => {
    expect(nextTypedCell({ row: 0, column: 3 }, 1, size, typed)).toEqual({ row: 1, column: 1 });
    expect(nextTypedCell({ row: 1, column: 1 }, -1, size, typed)).toEqual({ row: 0, column: 3 });
  });

  it('ends with the sheet, and when nothing can be typed', () => {
    expect(nextTypedCell({ row: 2, column: 3 }, 1, size, typed)).toBeNull();
    expect(nextTypedCell({ row: 0, column: 1 }, -1, size, typed)).toBeNull();
    expect(nextTypedCell({ row: 0, column: 0 }, 1, size, () => false)).toBeNull();
  });
});

describe('the neighbour an arrow points to', () => {
  it('is one step away, and none past the edge or for another key', () => {
    expect(neighbourCell('ArrowDown', { row: 0, column: 2 }, size)).toEqual({ row: 1, column: 2 });
    expect(neighbourCell('ArrowLeft', { row: 0, column: 2 }, size)).toEqual({ row: 0, column: 1 });
    expect(neighbourCell('ArrowUp', { row: 0, column: 2 }, size)).toBeNull();
    expect(neighbourCell('ArrowRight', { row: 0, column: 3 }, size)).toBeNull();
    expect(neighbourCell('Enter', { row: 0, column: 2 }, size)).toBeNull();
  });
});
