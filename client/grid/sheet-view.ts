import type { GridApi } from 'ag-grid-community';
import { type ContentRows, contentRows } from './content-rows.ts';
import type { SheetColumn, SheetRow } from './grid-column.ts';
import type { CellAt, SheetSize } from './range-model.ts';

/** The sheet as rows and columns counted from 0, whatever the grid library draws it with. */
export interface SheetView<Row extends SheetRow> {
  size(): SheetSize;
  rowAt(index: number): Row | undefined;
  /** The rows without the headings between them. */
  content(): ContentRows;
  rowIndexOf(key: string): number;
  columnAt(index: number): SheetColumn<Row> | undefined;
  columnIndexOf(columnId: string): number;
  /** The cell an event happened in; null outside the body's cells. */
  cellOf(target: EventTarget | null): CellAt | null;
  cellElements(): { readonly at: CellAt; readonly element: HTMLElement }[];
  focus(cell: CellAt): void;
  reveal(cell: CellAt): void;
}

/** `ordered`: the rows as shown, kept by the owner of the grid. */
export function sheetView<Row extends SheetRow>(
  host: HTMLElement,
  api: GridApi<Row>,
  columns: readonly SheetColumn<Row>[],
  ordered: () => readonly Row[],
): SheetView<Row> {
  const byId = new Map(columns.map((column) => [column.id, column]));
  const places = onceFor(ordered, (rows) => new Map(rows.map((row, index) => [row.key, index])));
  const content = onceFor(ordered, contentRows);
  const shownIds = (): string[] => api.getAllDisplayedColumns().map((column) => column.getColId());

  function at(element: Element, ids: readonly string[]): CellAt | null {
    // By key: the number the grid writes on a row lags a frame behind when rows have moved.
    const row = places().get(element.closest('.ag-row')?.getAttribute('row-id') ?? '');
    const column = ids.indexOf(element.getAttribute('col-id') ?? '');
    return row !== undefined && column >= 0 ? { row, column } : null;
  }

  return {
    size: () => ({ rows: ordered().length, columns: shownIds().length }),
    rowAt: (index) => ordered()[index],
    content,
    rowIndexOf: (key) => places().get(key) ?? -1,
    columnAt: (index) => byId.get(shownIds()[index] ?? ''),
    columnIndexOf: (columnId) => shownIds().indexOf(columnId),
    cellOf: (target) => {
      const element = target instanceof Element ? target.closest('.ag-cell') : null;
      return element === null || !host.contains(element) ? null : at(element, shownIds());
    },
    cellElements: () => {
      const ids = shownIds();
      return [...host.querySelectorAll<HTMLElement>('.ag-row .ag-cell')].flatMap((element) => {
        const place = at(element, ids);
        return place === null ? [] : [{ at: place, element }];
      });
    },
    focus: (cell) => {
      const columnId = shownIds()[cell.column];
      if (columnId === undefined) return;
      api.ensureIndexVisible(cell.row);
      api.ensureColumnVisible(columnId);
      api.setFocusedCell(cell.row, columnId);
    },
    reveal: (cell) => {
      const columnId = shownIds()[cell.column];
      if (columnId === undefined) return;
      api.ensureIndexVisible(cell.row);
      api.ensureColumnVisible(columnId);
    },
  };
}

/** What `make` makes of the rows, made anew only when there are others. */
function onceFor<Row, Made>(rows: () => readonly Row[], make: (rows: readonly Row[]) => Made): () => Made {
  let made: { readonly of: readonly Row[]; readonly result: Made } | null = null;
  return () => {
    const now = rows();
    if (made?.of !== now) made = { of: now, result: make(now) };
    return made.result;
  };
}

/** True inside a cell's editor, where keys and the clipboard belong to the text. */
export function isInEditor(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('input, textarea, .choice-editor') !== null;
}

/** True on a column's header, whose keys are about the column. */
export function isInHeader(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('.ag-header-cell, .ag-header-group-cell') !== null;
}
