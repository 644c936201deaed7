import { startAutoScroll } from './auto-scroll.ts';
import type { SheetRow } from './grid-column.ts';
import {
  type CellAt,
  type CellRange,
  fitRange,
  holds,
  isSingle,
  moveHead,
  rectangleOf,
  sameCell,
  sameRange,
  singleCell,
  wholeColumns,
  wholeRows,
} from './range-model.ts';
import { isInEditor, type SheetView } from './sheet-view.ts';

export interface RangeSelection {
  get(): CellRange | null;
  set(range: CellRange | null): void;
  /** Marks the cells on screen again, after the grid has drawn others. */
  paint(): void;
}

/**
 * The selected range of a sheet, made by dragging, Shift+click, row numbers and headers. The grid's keyboard focus
 * stays on the anchor. Native events on the container are used because the grid's own callbacks arrive later.
 */
export function rangeSelection<Row extends SheetRow>(
  host: HTMLElement,
  view: SheetView<Row>,
  changed: (range: CellRange | null) => void,
): RangeSelection {
  let range: CellRange | null = null;
  let dragging: 'cells' | 'rows' | null = null;

  function set(next: CellRange | null): void {
    if (sameRange(range, next)) return;
    range = next;
    paint();
    changed(range);
  }

  function paint(): void {
    range = range === null ? null : fitRange(range, view.size());
    const rectangle = range === null ? null : rectangleOf(range);
    for (const { at, element } of view.cellElements()) {
      const inside = rectangle !== null && holds(rectangle, at);
      const several = rectangle !== null && !isSingle(rectangle);
      element.classList.toggle('in-range', inside && several);
      element.classList.toggle('range-anchor', range !== null && sameCell(at, range.anchor));
      element.classList.toggle(
        'range-corner',
        inside && at.row === rectangle.bottom && at.column === rectangle.right,
      );
      element.classList.toggle('range-top', inside && several && at.row === rectangle.top);
      element.classList.toggle('range-bottom', inside && several && at.row === rectangle.bottom);
      element.classList.toggle('range-left', inside && several && at.column === rectangle.left);
      element.classList.toggle('range-right', inside && several && at.column === rectangle.right);
      element.classList.toggle(
        'range-row',
        rectangle !== null && at.column === 0 && at.row >= rectangle.top && at.row <= rectangle.bottom,
      );
    }
  }

  function extendTo(cell: CellAt): void {
    if (range === null) return;
    const grown = { anchor: range.anchor, head: cell };
    set(dragging === 'rows' ? wholeRows(grown, view.size()) : grown);
  }

  function startOnCell(event: MouseEvent, cell: CellAt): void {
    const onOrdinal = view.columnAt(cell.column)?.kind === 'ordinal';
    const from = event.shiftKey && range !== null ? range.anchor : cell;
    if (from !== cell) {
      // The focus stays where the range began, so the grid must not hear of this press.
      event.preventDefault();
      event.stopPropagation();
    }
    const grown = { anchor: from, head: cell };
    dragging = onOrdinal ? 'rows' : 'cells';
    set(onOrdinal ? wholeRows(grown, view.size()) : grown);
    startAutoScroll(host, event, (rows, columns) => {
      if (range === null) return;
      const moved = moveHead(range, rows, columns, view.size());
      set(dragging === 'rows' ? wholeRows(moved, view.size()) : moved);
      view.reveal(moved.head);
    });
  }

  // The grid gives a pressed cell the focus, with which a range would begin there instead of reaching there.
  host.addEventListener(
    'pointerdown',
    (event) => {
      if (event.shiftKey && range !== null && view.cellOf(event.target) !== null && !isInEditor(event.target))
        event.stopPropagation();
    },
    { capture: true },
  );
  host.addEventListener(
    'mousedown',
    (event) => {
      if (event.button !== 0 || isInEditor(event.target)) return;
      const cell = view.cellOf(event.target);
      if (cell !== null) return startOnCell(event, cell);
      const header = (event.target as Element).closest('.ag-header-cell');
      const column = view.columnIndexOf(header?.getAttribute('col-id') ?? '');
      const otherUse = (event.target as Element).closest('.ag-header-cell-resize, .head-tool') !== null;
      if (column >= 0 && !otherUse && view.size().rows > 0) {
        view.focus({ row: 0, column });
        set(wholeColumns(singleCell({ row: 0, column }), view.size()));
      }
    },
    { capture: true },
  );
  host.addEventListener('mouseover', (event) => {
    if (dragging === null) return;
    if ((event.buttons & 1) === 0) {
      dragging = null;
      return;
    }
    const cell = view.cellOf(event.target);
    if (cell !== null) extendTo(cell);
  });
  window.addEventListener('mouseup', () => {
    // A cell half under the pinned columns comes out before its editor opens.
    if (dragging === 'cells' && range !== null && isSingle(rectangleOf(range))) view.reveal(range.anchor);
    dragging = null;
  });
  host.addEventListener('focusin', (event) => {
    if (isInEditor(event.target)) return;
    const cell = view.cellOf(event.target);
    if (cell !== null && (range === null || !sameCell(cell, range.anchor))) set(singleCell(cell));
  });

  return { get: () => range, set, paint };
}
