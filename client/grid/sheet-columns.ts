import type { GridApi } from 'ag-grid-community';
import { type ColumnLayout, columnOrder, USUAL_LAYOUT } from './column-layout.ts';
import { contentWidths } from './content-widths.ts';
import type { SheetColumn, SheetRow } from './grid-column.ts';

/** As in the style sheets: a phone, or a window as narrow as one. */
const NARROW_WINDOW = '(width < 48rem)';

export interface SheetColumns<Row extends SheetRow> {
  layout(): ColumnLayout;
  arrange(layout: ColumnLayout): void;
  /** Whether columns are shown until the reader decides. */
  setUsual(columnIds: readonly string[], visible: boolean): void;
  isShown(columnId: string): boolean;
  /** Makes the columns that ask for it as wide as what these rows show in them. */
  fit(rows: readonly Row[]): void;
}

/** Where the columns stand, how wide they are and which are shown: what the reader decided, else what the sheet thinks. */
export function sheetColumns<Row extends SheetRow>(
  api: GridApi<Row>,
  columns: readonly SheetColumn<Row>[],
  changed: (layout: ColumnLayout) => void,
): SheetColumns<Row> {
  const narrow = window.matchMedia(NARROW_WINDOW);
  const usual = new Map(columns.map(({ id, hidden }) => [id, hidden !== true]));
  let fitted: ReadonlyMap<string, number> = new Map();
  let layout = USUAL_LAYOUT;
  let asApplied: ReadonlyMap<string, number> = new Map();

  function isShown({ id, narrow: there, pinned }: SheetColumn<Row>): boolean {
    if (narrow.matches && there === 'hidden') return false;
    return pinned === true || (layout.visible[id] ?? usual.get(id) ?? true);
  }

  function widthOf({ id, width, narrow: there }: SheetColumn<Row>): number {
    if (narrow.matches && typeof there === 'number') return there;
    return layout.widths[id] ?? fitted.get(id) ?? width;
  }

  function apply(): void {
    const byId = new Map(columns.map((column) => [column.id, column]));
    const state = columnOrder(columns, layout.order).flatMap((colId) => {
      const column = byId.get(colId);
      return column === undefined ? [] : [{ colId, hide: !isShown(column), width: widthOf(column) }];
    });
    api.applyColumnState({ state, applyOrder: true });
    asApplied = standing();
  }

  /** Where the columns stand and how wide they are, in their order. */
  function standing(): ReadonlyMap<string, number> {
    const all = api.getAllGridColumns() ?? [];
    return new Map(all.map((column) => [column.getColId(), Math.round(column.getActualWidth())]));
  }

  /** Whatever stands otherwise than it was put is what the reader has decided since. */
  function keep(): void {
    const now = standing();
    const order = [...now.keys()];
    const moved = order.join() !== [...asApplied.keys()].join();
    const resized = [...now].filter(([id, width]) => width !== asApplied.get(id));
    asApplied = now;
    if (!moved && resized.length === 0) return;
    layout = {
      ...layout,
      ...(moved ? { order } : {}),
      widths: { ...layout.widths, ...Object.fromEntries(resized) },
    };
    changed(layout);
  }

  api.addEventListener('columnResized', ({ source }) => {
    if (source === 'uiColumnResized') keep();
  });
  // Not only a finished move: a drag that ends outside the headers, or by Escape, has moved the column all the same.
  api.addEventListener('columnMoved', ({ source }) => {
    if (source === 'uiColumnMoved') keep();
  });
  // The grid tells of moves a turn later, and a page that is being left has no later.
  window.addEventListener('pagehide', () => {
    if (!api.isDestroyed()) keep();
  });
  narrow.addEventListener('change', apply);
  apply();

  return {
    layout: () => layout,
    arrange(next) {
      layout = next;
      apply();
    },
    setUsual(columnIds, visible) {
      for (const id of columnIds) usual.set(id, visible);
      apply();
    },
    isShown: (columnId) => columns.some((column) => column.id === columnId && isShown(column)),
    fit(rows) {
      fitted = contentWidths(columns, rows);
      apply();
    },
  };
}
