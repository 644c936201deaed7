import './register-modules.ts';
import './sheet.css';
import { createGrid, type GridApi } from 'ag-grid-community';
import { cellNote } from './cell-note.ts';
import { clipboardEvents } from './clipboard-events.ts';
import { columnDefinitions } from './column-definitions.ts';
import { type Copy, layBlock } from './fill.ts';
import { fillHandle } from './fill-handle.ts';
import { type CellEdit, isEditable, type SheetColumn, type SheetRow } from './grid-column.ts';
import { gridTheme } from './grid-theme.ts';
import { headerTitles } from './header-titles.ts';
import { type CellAt, type Rectangle, rectangleOf, singleCell } from './range-model.ts';
import { rangeSelection } from './range-selection.ts';
import { type RowCommand, sheetKeys } from './sheet-keys.ts';
import { sheetView } from './sheet-view.ts';
import { touchEdit } from './touch-edit.ts';

/** As in the style sheets: a phone, or a window as narrow as one. */
const NARROW_WINDOW = '(width < 48rem)';

export type EditKind = 'type' | 'paste' | 'fill' | 'clear' | 'cut';

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
  /** Forgets range and scroll, for rows that have nothing to do with the ones before. */
  reset(): void;
  /** Puts scroll and focus back after the host was out of the document. */
  resume(): void;
}

/** A spreadsheet on the Community grid: own ranges, clipboard, fills and keys around its cells and editors. */
export function createSheet<Row extends SheetRow>(options: SheetOptions<Row>): Sheet<Row> {
  const { host, columns } = options;
  let rows: readonly Row[] = [];
  let repaint = (): void => undefined;

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
      const next = nextTypedCell(at, backwards ? -1 : 1);
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
      if (typeof newValue === 'string')
        options.write([{ key: data.key, columnId: column.getColId(), text: newValue }], 'type');
    },
    onViewportChanged: () => repaint(),
    onModelUpdated: () => repaint(),
    onVirtualColumnsChanged: () => repaint(),
    onDisplayedColumnsChanged: () => repaint(),
  });
  api.setGridAriaProperty('label', options.label);

  const view = sheetView(host, api, columns, () => rows);
  fillHandle(host, view, () => selection, fill);
  const selection = rangeSelection(host, view, (range) => {
    const row = range === null ? undefined : view.rowAt(range.anchor.row);
    options.focused(row === undefined || row.isBlank ? null : row.key);
  });
  repaint = inNextFrame(() => {
    selection.paint();
    note.refresh();
  });
  const note = cellNote(host);
  sheetKeys(host, view, selection, {
    clear: (range) => clear(range, false),
    fill,
    rows: (command) => options.rows(command, selectedKeys()),
    openFigure: options.openFigure,
  });
  touchEdit(host, view, selection, (cell) => {
    const column = view.columnAt(cell.column);
    if (column !== undefined) api.startEditingCell({ rowIndex: cell.row, colKey: column.id });
  });
  headerTitles(host, columns);
  clipboardEvents(host, view, selection, { paste, clear });
  host.addEventListener('click', (event) => {
    const figure = event.target instanceof Element ? event.target.closest<HTMLElement>('.figure') : null;
    if (figure?.dataset.at !== undefined && !event.shiftKey) options.openFigure(figure.dataset.at);
  });

  const narrow = window.matchMedia(NARROW_WINDOW);
  const fitWindow = (): void => {
    const special = columns.filter((column) => column.narrow !== undefined);
    const hidden = special.filter((column) => column.narrow === 'hidden').map(({ id }) => id);
    api.setColumnsVisible(hidden, !narrow.matches);
    api.setColumnWidths(
      special.map(({ id, width, narrow: there }) => ({
        key: id,
        newWidth: narrow.matches && typeof there === 'number' ? there : width,
      })),
    );
  };
  narrow.addEventListener('change', fitWindow);
  fitWindow();

  function write(cells: readonly { readonly to: CellAt; readonly text: string }[], kind: EditKind): void {
    const grown = new Map<number, string>();
    const edits = cells.flatMap(({ to, text }): CellEdit[] => {
      const column = view.columnAt(to.column);
      if (column === undefined || !isEditable(column)) return [];
      const key = view.rowAt(to.row)?.key ?? grown.get(to.row) ?? options.newKey();
      if (to.row >= rows.length) grown.set(to.row, key);
      return [{ key, columnId: column.id, text }];
    });
    if (edits.length > 0) options.write(edits, kind);
  }

  function paste(block: readonly (readonly string[])[], range: Rectangle): void {
    const cells = layBlock(block, range);
    write(cells, 'paste');
    const last = cells.at(-1)?.to;
    if (last !== undefined)
      selection.set({
        anchor: { row: range.top, column: range.left },
        head: { row: last.row, column: Math.min(last.column, view.size().columns - 1) },
      });
  }

  function fill(copies: readonly Copy[]): void {
    const texts = copies.flatMap(({ from, to }) => {
      const row = view.rowAt(from.row);
      const column = view.columnAt(from.column);
      return row === undefined || column === undefined || view.rowAt(to.row)?.isBlank
        ? []
        : [{ to, text: column.raw(row) }];
    });
    write(texts, 'fill');
  }

  function clear(range: Rectangle, cut: boolean): void {
    const cells: { to: CellAt; text: string }[] = [];
    for (let row = range.top; row <= range.bottom; row += 1)
      for (let column = range.left; column <= range.right; column += 1)
        if (view.rowAt(row)?.isBlank !== true)
          cells.push({ to: { row, column }, text: view.columnAt(column)?.cleared ?? '' });
    write(cells, cut ? 'cut' : 'clear');
  }

  function selectedKeys(): string[] {
    const range = selection.get();
    if (range === null) return [];
    const { top, bottom } = rectangleOf(range);
    return rows.slice(top, bottom + 1).flatMap((row) => (row.isBlank ? [] : [row.key]));
  }

  /** Tab passes over computed cells, so that a row is typed in one go; at its end it goes on to the next row. */
  function nextTypedCell(from: CellAt, step: 1 | -1): CellAt | null {
    const size = view.size();
    let { row, column } = from;
    while (row >= 0 && row < size.rows) {
      column += step;
      if (column < 0 || column >= size.columns) {
        row += step;
        column = step === 1 ? -1 : size.columns;
        continue;
      }
      const found = view.columnAt(column);
      if (found !== undefined && isEditable(found)) return { row, column };
    }
    return null;
  }

  /** Takes the entry and goes where the key points, without opening an editor there. */
  function leaveBy(event: KeyboardEvent): void {
    const range = selection.get();
    if (range === null) return;
    event.preventDefault();
    event.stopPropagation();
    api.stopEditing();
    const { row, column } = range.anchor;
    const size = view.size();
    const next =
      event.key === 'Tab'
        ? nextTypedCell(range.anchor, event.shiftKey ? -1 : 1)
        : neighbour(event.key, { row, column });
    if (
      next !== null &&
      next.row >= 0 &&
      next.column >= 0 &&
      next.row < size.rows &&
      next.column < size.columns
    )
      view.focus(next);
  }

  return {
    update(next, totals) {
      const moved = next.length !== rows.length || next.some((row, index) => row.key !== rows[index]?.key);
      rows = next;
      api.setGridOption('rowData', [...next]);
      api.setGridOption('pinnedBottomRowData', totals === null ? [] : [totals]);
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

function neighbour(key: string, { row, column }: CellAt): CellAt | null {
  switch (key) {
    case 'ArrowUp':
      return { row: row - 1, column };
    case 'ArrowDown':
      return { row: row + 1, column };
    case 'ArrowLeft':
      return { row, column: column - 1 };
    case 'ArrowRight':
      return { row, column: column + 1 };
    default:
      return null;
  }
}

function inNextFrame(work: () => void): () => void {
  let waiting = false;
  return () => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      work();
    });
  };
}
