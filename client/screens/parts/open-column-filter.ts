import { columnName } from '../../grid/grid-column.ts';
import type { PartBook } from './part-book.ts';
import type { PartColumn } from './part-column-kinds.ts';
import type { PartSheetRow } from './part-sheet-row.ts';
import { openFilterPanel } from './tools/filter-panel.ts';
import { filterValues } from './view/filter-values.ts';
import type { ListShown } from './view/list-shown.ts';
import { type FilterField, withFilter } from './view/list-view.ts';

/** The values of a column to choose from; each choice shows at once. */
export function openColumnFilter(
  button: HTMLElement,
  field: FilterField,
  column: PartColumn,
  lines: readonly PartSheetRow[],
  book: PartBook,
  list: ListShown,
): void {
  openFilterPanel(
    button,
    columnName(column),
    filterValues(lines, field, book),
    () => list.view().filters[field] ?? null,
    (values) => list.change((view) => withFilter(view, field, values)),
  );
}
