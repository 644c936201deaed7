import type { PartBook } from '../part-book.ts';
import { rawText } from '../part-cell-views.ts';
import type { PartSheetRow } from '../part-sheet-row.ts';
import type { FilterValue } from '../tools/filter-panel.ts';
import type { FilterField } from './list-view.ts';
import { valueName } from './value-name.ts';

const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** The values the lines hold in a column, by name, with the empty one last. */
export function filterValues(
  lines: readonly PartSheetRow[],
  field: FilterField,
  book: PartBook,
): FilterValue[] {
  const rows = new Map<string, number>();
  for (const line of lines) {
    const value = rawText(line, field);
    rows.set(value, (rows.get(value) ?? 0) + 1);
  }
  return [...rows]
    .map(([value, count]) => ({ value, text: valueName(field, value, book), rows: count }))
    .toSorted((a, b) => Number(a.value === '') - Number(b.value === '') || collator.compare(a.text, b.text));
}
