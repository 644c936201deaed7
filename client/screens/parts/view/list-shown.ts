import type { ProjectState } from '../../../../server/http/contract.ts';
import type { PartBook } from '../part-book.ts';
import { rawText } from '../part-cell-views.ts';
import type { PartColumn } from '../part-column-kinds.ts';
import type { PartSheetRow } from '../part-sheet-row.ts';
import { type Arrangement, arrangeLines } from './arrange-lines.ts';
import { groupedLines, headingKey } from './group-headings.ts';
import { heldRows } from './held-rows.ts';
import { isFiltered, type ListView, PLAIN_VIEW, withGroupOpen, withTouched } from './list-view.ts';
import { rememberedGrouping, rememberGrouping } from './remembered-groups.ts';

export interface ListShown {
  view(): ListView;
  change(next: (view: ListView) => ListView): void;
  /** Another project is shown: everything of it, grouped as it was last time. */
  enter(projectId: string): void;
  /** The rows to show. While `hold`, none of those shown changes its place. */
  rows(lines: readonly PartSheetRow[], project: ProjectState, book: PartBook, hold: boolean): PartSheetRow[];
  /** Of how many parts how many match, and how many more are kept in sight. */
  counts(): { readonly all: number; readonly matching: number; readonly kept: number };
  /** All lines in the order shown, whatever is filtered or folded away. */
  fullOrder(): readonly PartSheetRow[];
  /** Opens or closes the group that a row or heading belongs to. False when the list is not grouped. */
  openGroup(key: string, open?: boolean): boolean;
  /** Key of the heading a row stands under; null when the list is not grouped. */
  headingOf(key: string): string | null;
  openAllGroups(open: boolean): void;
  /** Makes a row visible that a filter or a closed group hides. */
  reveal(key: string): void;
  /** The rows above and below a block, as shown in its group; null where the group ends. */
  around(firstKey: string, lastKey: string): { readonly above: string | null; readonly below: string | null };
  /** The last row of the group a heading stands over. */
  lastUnder(headingKey: string): string | null;
}

/** Keeps what of the list is shown, and says what that comes to. `changed` is called when it is to be drawn again. */
export function listShown(columns: ReadonlyMap<string, PartColumn>, changed: () => void): ListShown {
  let view = PLAIN_VIEW;
  let projectId = '';
  let all: readonly PartSheetRow[] = [];
  let arrangement: Arrangement = { lines: [], groups: null, matching: 0, kept: 0 };
  let shown: readonly PartSheetRow[] = [];

  function change(next: (view: ListView) => ListView): void {
    const before = view;
    view = next(view);
    if (view === before) return;
    const { groupBy, closed } = view;
    if (groupBy !== before.groupBy || closed !== before.closed)
      rememberGrouping(projectId, { groupBy, closed: [...closed] });
    changed();
  }

  /** The group a row or a heading belongs to; undefined when there is none. */
  function groupOf(key: string): string | undefined {
    const { groupBy } = view;
    if (groupBy === null) return undefined;
    const line = all.find((one) => one.key === key);
    if (line !== undefined) return rawText(line, groupBy);
    return arrangement.groups?.find(({ value }) => headingKey(groupBy, value) === key)?.value;
  }

  return {
    view: () => view,
    change,
    enter(id) {
      projectId = id;
      shown = [];
      const { groupBy, closed } = rememberedGrouping(id);
      view = { ...PLAIN_VIEW, groupBy, closed: new Set(closed) };
    },
    rows(lines, project, book, hold) {
      all = lines;
      arrangement = arrangeLines(lines, view, columns);
      const { groups } = arrangement;
      const before = new Map(shown.flatMap((row) => (row.isHeading === true ? [[row.key, row]] : [])));
      const next =
        groups === null || view.groupBy === null
          ? [...arrangement.lines]
          : groupedLines(groups, view.groupBy, project, book, before);
      const plain = !isFiltered(view) && view.sort === null && view.groupBy === null;
      shown = hold && !plain ? heldRows(shown, next, lines) : next;
      return [...shown];
    },
    counts: () => ({ all: all.length, matching: arrangement.matching, kept: arrangement.kept }),
    fullOrder() {
      const everything = arrangeLines(all, { ...view, search: '', filters: {} }, columns);
      return everything.groups?.flatMap(({ lines }) => lines) ?? everything.lines;
    },
    openGroup(key, open) {
      const value = groupOf(key);
      if (value === undefined) return false;
      change((now) => withGroupOpen(now, value, open ?? now.closed.has(value)));
      return true;
    },
    headingOf(key) {
      const value = groupOf(key);
      return value === undefined || view.groupBy === null ? null : headingKey(view.groupBy, value);
    },
    openAllGroups(open) {
      const values = arrangement.groups?.map(({ value }) => value) ?? [];
      change((now) => ({ ...now, closed: new Set(open ? [] : values) }));
    },
    reveal(key) {
      const value = groupOf(key);
      const hidden = !arrangement.lines.some((line) => line.key === key);
      change((now) => {
        const kept = hidden ? withTouched(now, [key], []) : now;
        return value === undefined ? kept : withGroupOpen(kept, value, true);
      });
    },
    around(firstKey, lastKey) {
      const first = shown.findIndex(({ key }) => key === firstKey);
      const last = shown.findIndex(({ key }) => key === lastKey);
      const rowAt = (index: number): string | null => {
        const row = shown[index];
        return row === undefined || row.isHeading === true ? null : row.key;
      };
      return { above: first < 0 ? null : rowAt(first - 1), below: last < 0 ? null : rowAt(last + 1) };
    },
    lastUnder(key) {
      const value = groupOf(key);
      const group = arrangement.groups?.find((one) => one.value === value);
      return group?.lines.at(-1)?.key ?? null;
    },
  };
}
