import type { SheetRow } from './grid-column.ts';
import { type CellAt, isSingle, rectangleOf, sameCell } from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import { isInEditor, type SheetView } from './sheet-view.ts';

/** On a touch screen the first tap selects a cell and a second tap on it opens its editor. */
export function touchEdit<Row extends SheetRow>(
  host: HTMLElement,
  view: SheetView<Row>,
  selection: RangeSelection,
  edit: (cell: CellAt) => void,
): void {
  let selectedBefore: CellAt | null = null;
  host.addEventListener(
    'pointerdown',
    () => {
      const range = selection.get();
      selectedBefore = range !== null && isSingle(rectangleOf(range)) ? range.anchor : null;
    },
    { capture: true },
  );
  host.addEventListener('click', (event) => {
    if (!(event instanceof PointerEvent) || event.pointerType !== 'touch' || isInEditor(event.target)) return;
    const cell = view.cellOf(event.target);
    if (cell !== null && selectedBefore !== null && sameCell(cell, selectedBefore)) edit(cell);
  });
}
