import type { SortDirection } from '../../../grid/header-cell.ts';
import type { PartColumn } from '../part-column-kinds.ts';
import type { PartSheetRow } from '../part-sheet-row.ts';

const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/**
 * The lines in the order of a column. Equal ones stay as the list has them; those without a value in the column, such
 * as an unreadable length, come last in either direction, and `late` ones after all others.
 */
export function sortLines(
  lines: readonly PartSheetRow[],
  column: PartColumn,
  direction: SortDirection,
  late: ReadonlySet<string>,
): PartSheetRow[] {
  const sign = direction === 'up' ? 1 : -1;
  const keyed = lines.map((line) => ({
    line,
    late: late.has(line.key),
    key: late.has(line.key) ? null : (column.order?.(line) ?? null),
  }));
  return keyed
    .toSorted((a, b) => {
      if (a.late !== b.late) return a.late ? 1 : -1;
      if (a.key === null || b.key === null) return Number(a.key === null) - Number(b.key === null);
      return sign * compare(a.key, b.key);
    })
    .map(({ line }) => line);
}

function compare(a: number | string, b: number | string): number {
  return typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b));
}
