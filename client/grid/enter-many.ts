import type { GridApi, ICellEditor } from 'ag-grid-community';
import type { SheetRow } from './grid-column.ts';
import { isSingle, type Rectangle, rectangleOf } from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import type { SheetView } from './sheet-view.ts';

/** Ctrl+Enter in a cell's editor: what was typed goes into every cell of the range, and the range stays. */
export function enterMany<Row extends SheetRow>(
  api: GridApi<Row>,
  view: SheetView<Row>,
  selection: RangeSelection,
  enter: (text: string, range: Rectangle) => void,
): void {
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey)
        return;
      const [editor] = api.getCellEditorInstances();
      const range = selection.get();
      if (editor === undefined || range === null) return;
      event.preventDefault();
      event.stopPropagation();
      if (isStuck(editor)) return;
      const typed: unknown = editor.getValue();
      api.stopEditing(true);
      const row = view.rowAt(range.anchor.row);
      const column = view.columnAt(range.anchor.column);
      if (row === undefined || column === undefined) return;
      const rectangle = rectangleOf(range);
      // An editor says nothing when its text is as it was; then the other cells take what this one holds.
      const text = typeof typed === 'string' ? typed : isSingle(rectangle) ? null : column.raw(row);
      if (text !== null) enter(text, rectangle);
      view.focus(range.anchor);
      selection.set(range);
    },
    { capture: true },
  );
}

/** True while what is typed is none of the choices. */
function isStuck(editor: ICellEditor): boolean {
  return 'isStuck' in editor && (editor.isStuck as () => boolean)();
}
