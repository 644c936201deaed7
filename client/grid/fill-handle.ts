import type { SheetRow } from './grid-column.ts';
import { type CellAt, holds, type Rectangle, rectangleOf } from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import type { SheetEdits } from './sheet-edits.ts';
import type { SheetView } from './sheet-view.ts';

/** Side of the square at the range's last corner that starts a fill, in CSS pixels. */
const HANDLE_PX = 11;

/**
 * Dragging the small square at the range's corner goes on with the range's content over the cells dragged across: as
 * a series where the range shows a step, or counts up by ones where Alt is held at the end; repeated otherwise. To be
 * set up before the range selection, which would take the press for the start of a new range.
 */
export function fillHandle<Row extends SheetRow>(
  host: HTMLElement,
  view: SheetView<Row>,
  selection: () => RangeSelection,
  edits: Pick<SheetEdits, 'fillTarget' | 'fillTo'>,
): void {
  let planned: { readonly target: Rectangle; readonly pointer: CellAt } | null = null;
  let filling = false;

  function preview(): void {
    for (const { at, element } of view.cellElements())
      element.classList.toggle('fill-preview', planned !== null && holds(planned.target, at));
  }

  // The grid gives the pressed cell the focus, which would begin a new range there.
  host.addEventListener(
    'pointerdown',
    (event) => {
      if (isOnHandle(event)) event.stopPropagation();
    },
    { capture: true },
  );
  host.addEventListener(
    'mousedown',
    (event) => {
      if (event.button !== 0 || !isOnHandle(event)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      filling = true;
      host.classList.add('filling');
    },
    { capture: true },
  );
  host.addEventListener('mouseover', (event) => {
    const range = selection().get();
    const cell = view.cellOf(event.target);
    if (!filling || range === null || cell === null) return;
    const target = edits.fillTarget(rectangleOf(range), cell);
    planned = target === null ? null : { target, pointer: cell };
    preview();
  });
  window.addEventListener('mouseup', (event) => {
    if (!filling) return;
    filling = false;
    host.classList.remove('filling');
    const done = planned;
    planned = null;
    preview();
    const range = selection().get();
    if (done === null || range === null) return;
    edits.fillTo(rectangleOf(range), done.pointer, event.altKey);
    const { top, left, bottom, right } = rectangleOf(range);
    selection().set({
      anchor: { row: Math.min(top, done.target.top), column: Math.min(left, done.target.left) },
      head: { row: Math.max(bottom, done.target.bottom), column: Math.max(right, done.target.right) },
    });
  });
}

function isOnHandle(event: MouseEvent): boolean {
  const cell = event.target instanceof Element ? event.target.closest('.ag-cell.range-corner') : null;
  if (cell === null) return false;
  const box = cell.getBoundingClientRect();
  return event.clientX > box.right - HANDLE_PX && event.clientY > box.bottom - HANDLE_PX;
}
