import { startAutoScroll } from './auto-scroll.ts';
import type { SheetRow } from './grid-column.ts';
import { type CellAt, holds, type Rectangle, rectangleOf, singleCell, wholeRows } from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import type { SheetView } from './sheet-view.ts';

/** Where rows are let go: between these two, as shown; null at an end, and beside the row that waits for an entry. */
export interface RowGap {
  readonly above: string | null;
  readonly below: string | null;
}

/**
 * Rows selected as a whole are taken elsewhere by dragging one of their numbers; a line shows where they would go, and
 * Escape leaves them where they are. A press without a drag selects the one row. To be set up before the range
 * selection, which would take the press for the start of a new range.
 */
export function dragRows<Row extends SheetRow>(
  host: HTMLElement,
  view: SheetView<Row>,
  selection: () => RangeSelection,
  drop: (gap: RowGap) => void,
): void {
  let pressed: { readonly cell: CellAt; readonly block: Rectangle } | null = null;
  /** Index of the row above which the line stands; null as long as the pointer has gone nowhere. */
  let place: number | null = null;

  function show(): void {
    host.classList.toggle('dragging-rows', pressed !== null && place !== null);
    for (const { at, element } of view.cellElements())
      element.classList.toggle('drop-line', place !== null && at.row === place);
  }

  function goTo(row: number): void {
    const last = view.size().rows - 1;
    const end = view.rowAt(last)?.isBlank === true ? last : last + 1;
    place = Math.max(0, Math.min(end, row));
    show();
  }

  function end(): void {
    pressed = null;
    place = null;
    show();
  }

  // The grid gives the pressed cell the focus, which would begin a new range there.
  host.addEventListener(
    'pointerdown',
    (event) => {
      if (selectedBlock(event) !== null) event.stopPropagation();
    },
    { capture: true },
  );
  host.addEventListener(
    'mousedown',
    (event) => {
      const block = selectedBlock(event);
      const cell = view.cellOf(event.target);
      if (block === null || cell === null) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      pressed = { cell, block };
      startAutoScroll(host, event, (rows) => {
        if (pressed === null || rows === 0) return;
        goTo((place ?? cell.row) + rows);
        view.reveal({ row: Math.min(place ?? 0, view.size().rows - 1), column: cell.column });
      });
    },
    { capture: true },
  );
  host.addEventListener('mousemove', (event) => {
    const over = pressed === null ? null : view.cellOf(event.target);
    if (over === null || (place === null && over.row === pressed?.cell.row)) return;
    const box = (event.target as Element).closest('.ag-row')?.getBoundingClientRect();
    goTo(over.row + (box !== undefined && event.clientY > box.top + box.height / 2 ? 1 : 0));
  });
  window.addEventListener(
    'keydown',
    (event) => {
      if (pressed === null || event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      end();
    },
    { capture: true },
  );
  window.addEventListener('mouseup', () => {
    if (pressed === null) return;
    const { cell, block } = pressed;
    const to = place;
    end();
    if (to === null) {
      view.focus(cell);
      selection().set(wholeRows(singleCell(cell), view.size()));
    } else if (to < block.top || to > block.bottom + 1) drop({ above: keyAt(to - 1), below: keyAt(to) });
  });

  function keyAt(index: number): string | null {
    const row = view.rowAt(index);
    return row === undefined || row.isBlank === true || row.isHeading === true ? null : row.key;
  }

  /** The block of whole rows whose number an event presses; null for every other press. */
  function selectedBlock(event: MouseEvent): Rectangle | null {
    const cell = view.cellOf(event.target);
    const range = selection().get();
    if (event.button !== 0 || event.shiftKey || cell === null || range === null) return null;
    const block = rectangleOf(range);
    const whole = block.left === 0 && block.right === view.size().columns - 1;
    const onNumber = view.columnAt(cell.column)?.kind === 'ordinal';
    const row = view.rowAt(cell.row);
    const held = whole && onNumber && holds(block, cell) && row?.isBlank !== true && row?.isHeading !== true;
    return held ? block : null;
  }
}
