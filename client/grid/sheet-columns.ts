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
  }

  function decide(decision: Partial<ColumnLayout>): void {
    layout = { ...layout, ...decision };
    changed(layout);
  }

  api.addEventListener('columnResized', ({ source, columns: resized }) => {
    if (source !== 'uiColumnResized') return;
    const widths = (resized ?? []).map((column) => [column.getColId(), Math.round(column.getActualWidth())]);
    decide({ widths: { ...layout.widths, ...Object.fromEntries(widths) } });
  });
  api.addEventListener('columnMoved', ({ source, finished }) => {
    if (source === 'uiColumnMoved' && finished)
      decide({ order: (api.getAllGridColumns() ?? []).map((column) => column.getColId()) });
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
