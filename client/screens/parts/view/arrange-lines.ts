import { rawText } from '../part-cell-views.ts';
import type { PartColumn } from '../part-column-kinds.ts';
import type { PartSheetRow } from '../part-sheet-row.ts';
import { lineMatches } from './line-matches.ts';
import { isFiltered, type ListView } from './list-view.ts';
import { sortLines } from './sort-lines.ts';
import { valueName } from './value-name.ts';

export interface LineGroup {
  /** As its rows hold it: the section's name, the material's id. */
  readonly value: string;
  readonly name: string;
  /** Rows of the group in the whole list. */
  readonly size: number;
  /** Those that are shown, or would be if the group were open. */
  readonly lines: readonly PartSheetRow[];
  readonly open: boolean;
}

export interface Arrangement {
  /** The lines in the order shown, when the list is not grouped; else they stand in the groups. */
  readonly lines: readonly PartSheetRow[];
  readonly groups: readonly LineGroup[] | null;
  /** Lines that match the search and the filters. */
  readonly matching: number;
  /** Lines shown although they do not match. */
  readonly kept: number;
}

const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** What of the list is shown, and in which order. Groups stand by name, with the rows that have none last. */
export function arrangeLines(
  lines: readonly PartSheetRow[],
  view: ListView,
  columns: ReadonlyMap<string, PartColumn>,
): Arrangement {
  const { sort, groupBy } = view;
  const matches = isFiltered(view) ? lineMatches(view, columns) : () => true;
  let matching = 0;
  const chosen = lines.filter((line) => {
    const match = matches(line);
    if (match) matching += 1;
    return match || view.kept.has(line.key);
  });
  const column = sort === null ? undefined : columns.get(sort.columnId);
  const ordered =
    sort === null || column === undefined ? chosen : sortLines(chosen, column, sort.direction, view.late);
  const kept = chosen.length - matching;
  if (groupBy === null) return { lines: ordered, groups: null, matching, kept };

  const sizes = new Map<string, number>();
  for (const line of lines) {
    const value = rawText(line, groupBy);
    sizes.set(value, (sizes.get(value) ?? 0) + 1);
  }
  const members = new Map<string, PartSheetRow[]>();
  for (const line of ordered) {
    const value = rawText(line, groupBy);
    const known = members.get(value);
    if (known === undefined) members.set(value, [line]);
    else known.push(line);
  }
  const groups = [...members].map(
    ([value, shown]): LineGroup => ({
      value,
      name: valueName(groupBy, value, (shown[0] as PartSheetRow).book),
      size: sizes.get(value) ?? 0,
      lines: shown,
      open: !view.closed.has(value),
    }),
  );
  groups.sort((a, b) => Number(a.value === '') - Number(b.value === '') || collator.compare(a.name, b.name));
  return { lines: ordered, groups, matching, kept };
}
