import './register-modules.ts';
import './sheet.css';
import { createGrid, type GridApi } from 'ag-grid-community';
import { cellNote } from './cell-note.ts';
import { clipboardEvents } from './clipboard-events.ts';
import { columnDefinitions } from './column-definitions.ts';
import { fillHandle } from './fill-handle.ts';
import { fitColumns } from './fit-columns.ts';
import { fitToContent } from './fit-to-content.ts';
import { type CellEdit, isEditable, type SheetColumn, type SheetRow } from './grid-column.ts';
import { gridTheme } from './grid-theme.ts';
import { headerTitles } from './header-titles.ts';
import { inNextFrame } from './in-next-frame.ts';
import { neighbourCell, nextTypedCell } from './next-cell.ts';
import { type CellAt, rectangleOf, singleCell } from './range-model.ts';
import { rangeSelection } from './range-selection.ts';
import { type EditKind, sheetEdits } from './sheet-edits.ts';
import { type RowCommand, sheetKeys } from './sheet-keys.ts';
import { sheetView } from './sheet-view.ts';
import { touchEdit } from './touch-edit.ts';

export interface SheetOptions<Row extends SheetRow> {
  readonly host: HTMLElement;
  /** The sheet's name for screen readers. */
  readonly label: string;
  readonly columns: readonly SheetColumn<Row>[];
  /** One edit of any size: everything in it belongs together. A key not shown yet is a new row at the end. */
  write(edits: readonly CellEdit[], kind: EditKind): void;
  /** A key for a row that a paste past the end makes. */
  newKey(): string;
  rows(command: RowCommand, keys: readonly string[]): void;
  openFigure(at: string): void;
  /** The row that now has the focus. */
  focused(key: string | null): void;
}

export interface Sheet<Row extends SheetRow> {
  /** Shows these rows; a row object that is the same as before is not drawn again. */
  update(rows: readonly Row[], totals: Row | null): void;
  /** Draws the headers again, after what they say has changed. */
  redrawHeaders(): void;
  goTo(key: string, columnId: string): void;
  /** Puts the range on the rows with these neighbouring keys, wherever they stand now, in the columns it had. */
  follow(keys: readonly string[]): void;
  /** Keys of the rows the range touches. */
  selectedKeys(): string[];
  showColumns(columnIds: readonly string[], visible: boolean): void;
  /** Forgets range, scroll and widths, for rows that have nothing to do with the ones before. */
  reset(): void;
  /** Puts scroll and marks back after the host was out of the document. */
  resume(): void;
}

/** A spreadsheet on the Community grid: own ranges, clipboard, fills and keys around its cells and editors. */
export function createSheet<Row extends SheetRow>(options: SheetOptions<Row>): Sheet<Row> {
  const { host, columns } = options;
  let rows: readonly Row[] = [];
  let repaint = (): void => undefined;
  let fitted = false;

  const api: GridApi<Row> = createGrid<Row>(host, {
    theme: gridTheme,
    columnDefs: columnDefinitions(columns, leaveBy),
    getRowId: ({ data }) => data.key,
    rowClassRules: { 'blank-row': ({ data }) => data?.isBlank === true },
    readOnlyEdit: true,
    stopEditingWhenCellsLoseFocus: true,
    enterNavigatesVertically: true,
    enterNavigatesVerticallyAfterEdit: true,
    suppressMovableColumns: true,
    tabToNextCell: ({ nextCellPosition, previousCellPosition: from, backwards }) => {
      if (from.rowPinned != null) return nextCellPosition ?? false;
      const at = { row: from.rowIndex, column: view.columnIndexOf(from.column.getColId()) };
      const next = typedAfter(at, backwards ? -1 : 1);
      const column = next === null ? null : api.getColumn(view.columnAt(next.column)?.id ?? '');
      return next === null || column === null ? false : { rowIndex: next.row, rowPinned: null, column };
    },
    animateRows: false,
    // A few dozen columns: all of them stay in the document, for the browser's own search and for screen readers.
    suppressColumnVirtualisation: true,
    ensureDomOrder: true,
    suppressNoRowsOverlay: true,
    popupParent: document.body,
    onCellEditRequest: ({ data, column, newValue }) => {
      if (typeof newValue !== 'string') return;
      options.write([{ key: data.key, columnId: column.getColId(), text: newValue }], 'type');
    },
    onViewportChanged: () => repaint(),
    onModelUpdated: () => repaint(),
    onDisplayedColumnsChanged: () => repaint(),
  });
  api.setGridAriaProperty('label', options.label);

  const view = sheetView(host, api, columns, () => rows);
  const edits = sheetEdits(view, () => selection, options.newKey, options.write);
  fillHandle(host, view, () => selection, edits.fill);
  const selection = rangeSelection(host, view, (range) => {
    const row = range === null ? undefined : view.rowAt(range.anchor.row);
    options.focused(row === undefined || row.isBlank ? null : row.key);
  });
  const note = cellNote(host);
  repaint = inNextFrame(() => {
    selection.paint();
    note.refresh();
  });
  sheetKeys(host, view, selection, {
    clear: (range) => edits.clear(range, false),
    fill: edits.fill,
    rows: (command) => options.rows(command, selectedKeys()),
    openFigure: options.openFigure,
  });
  touchEdit(host, view, selection, (cell) => {
    const column = view.columnAt(cell.column);
    if (column !== undefined) api.startEditingCell({ rowIndex: cell.row, colKey: column.id });
  });
  headerTitles(host, columns);
  clipboardEvents(host, view, selection, edits);
  fitColumns(api, columns);
  host.addEventListener('click', (event) => {
    const figure = event.target instanceof Element ? event.target.closest<HTMLElement>('.figure') : null;
    if (figure?.dataset.figure !== undefined && !event.shiftKey) options.openFigure(figure.dataset.figure);
  });

  function typedAfter(from: CellAt, step: 1 | -1): CellAt | null {
    return nextTypedCell(from, step, view.size(), (index) => {
      const column = view.columnAt(index);
      return column !== undefined && isEditable(column);
    });
  }

  /** Takes the entry and goes where the key points, without opening an editor there. */
  function leaveBy(event: KeyboardEvent): void {
    const range = selection.get();
    if (range === null) return;
    event.preventDefault();
    event.stopPropagation();
    api.stopEditing();
    const next =
      event.key === 'Tab'
        ? typedAfter(range.anchor, event.shiftKey ? -1 : 1)
        : neighbourCell(event.key, range.anchor, view.size());
    if (next !== null) view.focus(next);
  }

  function selectedKeys(): string[] {
    const range = selection.get();
    if (range === null) return [];
    const { top, bottom } = rectangleOf(range);
    return rows.slice(top, bottom + 1).flatMap((row) => (row.isBlank ? [] : [row.key]));
  }

  return {
    update(next, totals) {
      const moved = next.length !== rows.length || next.some((row, index) => row.key !== rows[index]?.key);
      rows = next;
      api.setGridOption('rowData', [...next]);
      api.setGridOption('pinnedBottomRowData', totals === null ? [] : [totals]);
      if (!fitted) fitToContent(api, columns, rows);
      fitted = true;
      // In the next frame, because rows only then carry their new places.
      if (moved) requestAnimationFrame(selection.followFocus);
    },
    redrawHeaders: () => api.refreshHeader(),
    goTo(key, columnId) {
      const cell = { row: view.rowIndexOf(key), column: view.columnIndexOf(columnId) };
      if (cell.row < 0 || cell.column < 0) return;
      view.focus(cell);
      selection.set(singleCell(cell));
    },
    follow(keys) {
      const range = selection.get();
      const first = view.rowIndexOf(keys[0] ?? '');
      const last = view.rowIndexOf(keys.at(-1) ?? '');
      if (range === null || first < 0 || last < 0) return;
      const moved = { anchor: { ...range.anchor, row: first }, head: { ...range.head, row: last } };
      view.focus(moved.anchor);
      selection.set(moved);
    },
    selectedKeys,
    showColumns: (ids, visible) => api.setColumnsVisible([...ids], visible),
    reset() {
      selection.set(null);
      fitted = false;
      api.clearFocusedCell();
      if (rows.length > 0) api.ensureIndexVisible(0, 'top');
    },
    resume() {
      const range = selection.get();
      if (range !== null) view.reveal(range.anchor);
      repaint();
    },
  };
}
