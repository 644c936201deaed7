import './register-modules.ts';
import './sheet.css';
import { createGrid, type GridApi } from 'ag-grid-community';
import { cellNote } from './cell-note.ts';
import { clipboardEvents } from './clipboard-events.ts';
import { columnDefinitions } from './column-definitions.ts';
import type { ColumnLayout } from './column-layout.ts';
import { dragRows, type RowGap } from './drag-rows.ts';
import { enterMany } from './enter-many.ts';
import { fillHandle } from './fill-handle.ts';
import { flashRows } from './flash-rows.ts';
import { type CellEdit, isEditable, type SheetColumn, type SheetRow } from './grid-column.ts';
import { gridTheme } from './grid-theme.ts';
import { type HeaderMarks, NO_MARKS } from './header-cell.ts';
import { headerKeys } from './header-keys.ts';
import { headerTitles } from './header-titles.ts';
import { inNextFrame } from './in-next-frame.ts';
import { keepPlace } from './keep-place.ts';
import { neighbourCell, nextTypedCell } from './next-cell.ts';
import { type CellAt, rectangleOf, singleCell } from './range-model.ts';
import { rangeSelection } from './range-selection.ts';
import { type SheetColumns, sheetColumns } from './sheet-columns.ts';
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
  /** Rows have been taken elsewhere with the mouse. */
  dropped(keys: readonly string[], gap: RowGap): void;
  openFigure(at: string): void;
  /** The row that now has the focus. */
  focused(key: string | null): void;
  /** The reader asks for the next order of a column: up, down, as the list stands. */
  sort(columnId: string): void;
  /** The reader asks for the values of a column, to be shown beside its button. */
  filter(columnId: string, button: HTMLElement): void;
  /** Opens or closes the group a row stands in; turns it over when `open` is not said. False when there is none. */
  openGroup(key: string, open?: boolean): boolean;
  /** The reader has moved or resized columns. */
  arranged(layout: ColumnLayout): void;
  /** An editor has closed, so that rows may change places again. */
  editingEnded(): void;
}

export interface Sheet<Row extends SheetRow> {
  /** Shows these rows; a row object that is the same as before is not drawn again. The focus stays with its row. */
  update(rows: readonly Row[], totals: Row | null): void;
  /** Draws the headers again, after what they say has changed. */
  redrawHeaders(): void;
  mark(marks: HeaderMarks): void;
  goTo(key: string, columnId: string): void;
  /** Puts the focus into the sheet, on its first cell when it had none. */
  takeFocus(): void;
  /** Puts the range on the rows with these neighbouring keys, wherever they stand now, in the columns it had. */
  follow(keys: readonly string[]): void;
  /** Keys of the rows the range touches. */
  selectedKeys(): string[];
  /** Draws the eye to rows that have gone elsewhere. */
  flash(keys: readonly string[]): void;
  /** Key of the row where the range begins, which may be a heading. */
  anchorKey(): string | null;
  isEditing(): boolean;
  readonly columns: SheetColumns<Row>;
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
  let marks = NO_MARKS;
  const marked = new Set<() => void>();

  const api: GridApi<Row> = createGrid<Row>(host, {
    theme: gridTheme,
    columnDefs: columnDefinitions(columns, {
      leaveBy,
      giveUp,
      marks: () => marks,
      onMarks: (mark) => {
        marked.add(mark);
        return () => marked.delete(mark);
      },
      sort: options.sort,
      filter: options.filter,
    }),
    getRowId: ({ data }) => data.key,
    rowClassRules: {
      'blank-row': ({ data }) => data?.isBlank === true,
      'heading-row': ({ data }) => data?.isHeading === true,
    },
    readOnlyEdit: true,
    stopEditingWhenCellsLoseFocus: true,
    suppressDragLeaveHidesColumns: true,
    suppressColumnMoveAnimation: true,
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
    onCellEditingStopped: () => options.editingEnded(),
    onViewportChanged: () => repaint(),
    onModelUpdated: () => repaint(),
    onDisplayedColumnsChanged: () => repaint(),
  });
  api.setGridAriaProperty('label', options.label);

  const view = sheetView(host, api, columns, () => rows);
  const edits = sheetEdits(view, () => selection, options.newKey, options.write);
  fillHandle(host, view, () => selection, edits);
  dragRows(
    host,
    view,
    () => selection,
    (gap) => options.dropped(selectedKeys(), gap),
  );
  const selection = rangeSelection(host, view, (range) => {
    const row = range === null ? undefined : view.rowAt(range.anchor.row);
    options.focused(row === undefined || row.isBlank || row.isHeading ? null : row.key);
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
    openGroup: options.openGroup,
    openFilter,
  });
  enterMany(api, view, selection, edits.enter);
  headerKeys(host, options.sort, options.filter);
  touchEdit(host, view, selection, (cell) => {
    const column = view.columnAt(cell.column);
    if (column !== undefined) api.startEditingCell({ rowIndex: cell.row, colKey: column.id });
  });
  headerTitles(host, columns);
  clipboardEvents(host, view, selection, edits);
  const arranged = sheetColumns(api, columns, options.arranged);
  host.addEventListener('click', (event) => {
    if (!(event.target instanceof Element) || event.shiftKey) return;
    const figure = event.target.closest<HTMLElement>('.figure')?.dataset.figure;
    if (figure !== undefined) return options.openFigure(figure);
    if (event.target.closest('.ag-cell[aria-expanded]') === null) return;
    const key = event.target.closest('.ag-row')?.getAttribute('row-id');
    if (key != null) options.openGroup(key);
  });

  function typedAfter(from: CellAt, step: 1 | -1): CellAt | null {
    return nextTypedCell(from, step, view.size(), (cell) => {
      const column = view.columnAt(cell.column);
      return column !== undefined && isEditable(column) && view.rowAt(cell.row)?.isHeading !== true;
    });
  }

  /** Takes the entry and goes where the key points, without opening an editor there. */
  function leaveBy(event: KeyboardEvent): void {
    const range = selection.get();
    if (range === null) return;
    event.preventDefault();
    event.stopPropagation();
    const from = range.anchor;
    const next =
      event.key === 'Tab'
        ? typedAfter(from, event.shiftKey ? -1 : 1)
        : event.key === 'Enter'
          ? { ...from, row: from.row + (event.shiftKey ? -1 : 1) }
          : neighbourCell(event.key, from, view.size());
    const key = next === null ? undefined : view.rowAt(next.row)?.key;
    takeEntry(from);
    // By key: taking the entry may have moved rows, or put a new line under the last one.
    if (next !== null) focusCell({ ...next, row: key === undefined ? next.row : view.rowIndexOf(key) });
  }

  /** At once: the grid itself would close the editor a turn later, and lose what is typed in between. */
  function giveUp(event: KeyboardEvent): void {
    event.preventDefault();
    event.stopPropagation();
    api.stopEditing(true);
    const range = selection.get();
    if (range !== null) view.focus(range.anchor);
  }

  /** Ends the edit and hands over what was typed at once; the grid itself would do so a moment later. */
  function takeEntry(at: CellAt): void {
    const [editor] = api.getCellEditorInstances();
    const typed: unknown = editor?.getValue();
    const row = view.rowAt(at.row);
    const column = view.columnAt(at.column);
    api.stopEditing(true);
    if (typeof typed === 'string' && row !== undefined && column !== undefined)
      options.write([{ key: row.key, columnId: column.id, text: typed }], 'type');
  }

  function focusCell(cell: CellAt): void {
    if (cell.row >= 0 && cell.row < view.size().rows) view.focus(cell);
    else if (cell.row >= 0) view.focus({ ...cell, row: view.size().rows - 1 });
  }

  function openFilter(columnId: string): boolean {
    const button = host.querySelector<HTMLElement>(`.ag-header-cell[col-id="${columnId}"] .head-filter`);
    if (button !== null) options.filter(columnId, button);
    return button !== null;
  }

  function selectedKeys(): string[] {
    const range = selection.get();
    if (range === null) return [];
    const { top, bottom } = rectangleOf(range);
    return rows.slice(top, bottom + 1).flatMap((row) => (row.isBlank || row.isHeading ? [] : [row.key]));
  }

  return {
    update(next, totals) {
      const place = keepPlace(host, view, selection);
      const moved = next.length !== rows.length || next.some((row, index) => row.key !== rows[index]?.key);
      rows = next;
      api.setGridOption('rowData', [...next]);
      api.setGridOption('pinnedBottomRowData', totals === null ? [] : [totals]);
      if (!fitted) arranged.fit(rows);
      fitted = true;
      if (moved) place();
    },
    redrawHeaders: () => api.refreshHeader(),
    mark(next) {
      marks = next;
      for (const mark of marked) mark();
    },
    goTo(key, columnId) {
      const cell = { row: view.rowIndexOf(key), column: view.columnIndexOf(columnId) };
      if (cell.row < 0 || cell.column < 0) return;
      view.focus(cell);
      selection.set(singleCell(cell));
    },
    takeFocus() {
      const range = selection.get();
      if (rows.length === 0) return;
      const cell = range?.anchor ?? { row: 0, column: Math.max(0, view.columnIndexOf(columns[1]?.id ?? '')) };
      view.focus(cell);
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
    flash: (keys) => flashRows(host, keys),
    anchorKey: () => view.rowAt(selection.get()?.anchor.row ?? -1)?.key ?? null,
    isEditing: () => api.getEditingCells().length > 0,
    columns: arranged,
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
