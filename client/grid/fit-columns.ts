import type { GridApi } from 'ag-grid-community';
import type { SheetColumn, SheetRow } from './grid-column.ts';

/** As in the style sheets: a phone, or a window as narrow as one. */
export const NARROW_WINDOW = '(width < 48rem)';

/** Hides and narrows the columns that say so while the window is narrow. */
export function fitColumns<Row extends SheetRow>(
  api: GridApi<Row>,
  columns: readonly SheetColumn<Row>[],
): void {
  const narrow = window.matchMedia(NARROW_WINDOW);
  const special = columns.filter((column) => column.narrow !== undefined);
  const hidden = special.filter((column) => column.narrow === 'hidden').map(({ id }) => id);
  const apply = (): void => {
    api.setColumnsVisible(hidden, !narrow.matches);
    api.setColumnWidths(
      special.map(({ id, width, narrow: there }) => ({
        key: id,
        newWidth: narrow.matches && typeof there === 'number' ? there : width,
      })),
    );
  };
  narrow.addEventListener('change', apply);
  apply();
}
