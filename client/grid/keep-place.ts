import type { SheetRow } from './grid-column.ts';
import { type CellRange, rectangleOf, singleCell } from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import type { SheetView } from './sheet-view.ts';

/**
 * Notes which row the focus and the range are on, and gives back what puts them there again once the rows stand
 * elsewhere. A range whose rows no longer stand together shrinks to where it began; a row that is gone leaves the
 * focus at its place in the list.
 */
export function keepPlace<Row extends SheetRow>(
  host: HTMLElement,
  view: SheetView<Row>,
  selection: RangeSelection,
): () => void {
  const range = selection.get();
  if (range === null) return () => undefined;
  const hadFocus = host.contains(document.activeElement) && view.cellOf(document.activeElement) !== null;
  const { top, bottom } = rectangleOf(range);
  const keys: string[] = [];
  for (let row = top; row <= bottom; row += 1) keys.push(view.rowAt(row)?.key ?? '');
  const anchorKey = view.rowAt(range.anchor.row)?.key ?? '';

  return () => {
    const anchorRow = view.rowIndexOf(anchorKey);
    const next = anchorRow < 0 ? inSheet(range, view.size().rows) : followed(range, anchorRow);
    if (next === null) return selection.set(null);
    selection.set(next);
    if (hadFocus) view.focus(next.anchor);
  };

  function followed(was: CellRange, anchorRow: number): CellRange {
    const headRow = anchorRow + was.head.row - was.anchor.row;
    const newTop = Math.min(anchorRow, headRow);
    const together = keys.every((key, index) => view.rowAt(newTop + index)?.key === key);
    const anchor = { ...was.anchor, row: anchorRow };
    return together ? { anchor, head: { ...was.head, row: headRow } } : singleCell(anchor);
  }
}

function inSheet(range: CellRange, rows: number): CellRange | null {
  return rows === 0 ? null : singleCell({ ...range.anchor, row: Math.min(range.anchor.row, rows - 1) });
}
