import type { CellAt, SheetSize } from './range-model.ts';

/** The next cell that can be typed in, along the row and on to the next row; null past the sheet's ends. */
export function nextTypedCell(
  from: CellAt,
  step: 1 | -1,
  size: SheetSize,
  isTyped: (cell: CellAt) => boolean,
): CellAt | null {
  let { row, column } = from;
  while (row >= 0 && row < size.rows) {
    column += step;
    if (column < 0 || column >= size.columns) {
      row += step;
      column = step === 1 ? -1 : size.columns;
    } else if (isTyped({ row, column })) return { row, column };
  }
  return null;
}

/** The neighbour an arrow key points to; null for other keys and past the sheet's edges. */
export function neighbourCell(key: string, from: CellAt, size: SheetSize): CellAt | null {
  const step = STEPS[key];
  if (step === undefined) return null;
  const [row, column] = [from.row + step[0], from.column + step[1]];
  return row < 0 || column < 0 || row >= size.rows || column >= size.columns ? null : { row, column };
}

const STEPS: Readonly<Record<string, readonly [rows: number, columns: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};
