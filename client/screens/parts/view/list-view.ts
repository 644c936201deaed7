import type { SortDirection } from '../../../grid/header-cell.ts';
import type { PartField } from '../part-sheet-row.ts';

/** What of the part list is shown, in which order and under which headings. The list itself stays as it is stored. */

export type FilterField = Extract<PartField, 'section' | 'materialId' | 'showRecipeId' | 'backRecipeId'>;
export type GroupField = Extract<PartField, 'section' | 'materialId'>;

export interface ListView {
  /** Text as typed in the search box. */
  readonly search: string;
  /** For each filtered column, the values shown, as the rows hold them. */
  readonly filters: Readonly<Partial<Record<FilterField, ReadonlySet<string>>>>;
  readonly sort: { readonly columnId: string; readonly direction: SortDirection } | null;
  readonly groupBy: GroupField | null;
  /** Group values whose rows are folded away. */
  readonly closed: ReadonlySet<string>;
  /** Keys of rows shown although they do not match: edited or added since the filter was last changed. */
  readonly kept: ReadonlySet<string>;
  /** Keys of rows added since the order was chosen; they stand last. */
  readonly late: ReadonlySet<string>;
}

const NONE: ReadonlySet<string> = new Set();

export const PLAIN_VIEW: ListView = {
  search: '',
  filters: {},
  sort: null,
  groupBy: null,
  closed: NONE,
  kept: NONE,
  late: NONE,
};

export const FILTER_FIELDS: readonly FilterField[] = [
  'section',
  'materialId',
  'showRecipeId',
  'backRecipeId',
];

export function isFiltered({ search, filters }: ListView): boolean {
  return search.trim() !== '' || Object.keys(filters).length > 0;
}

export function withSearch(view: ListView, search: string): ListView {
  return { ...view, search, kept: NONE };
}

/** `values` null: all of them. */
export function withFilter(view: ListView, field: FilterField, values: ReadonlySet<string> | null): ListView {
  const { [field]: _before, ...others } = view.filters;
  return { ...view, filters: values === null ? others : { ...others, [field]: values }, kept: NONE };
}

export function withoutFilters(view: ListView): ListView {
  return { ...view, search: '', filters: {}, kept: NONE };
}

/** The next order of a column: up, down, then as the list stands. */
export function withNextSort(view: ListView, columnId: string): ListView {
  const { sort } = view;
  const next = sort?.columnId !== columnId ? 'up' : sort.direction === 'up' ? 'down' : null;
  return { ...view, sort: next === null ? null : { columnId, direction: next }, late: NONE };
}

export function withoutSort(view: ListView): ListView {
  return { ...view, sort: null, late: NONE };
}

export function withGroups(view: ListView, groupBy: GroupField | null): ListView {
  return { ...view, groupBy, closed: NONE };
}

export function withGroupOpen(view: ListView, value: string, open: boolean): ListView {
  if (view.closed.has(value) !== open) return view;
  const closed = new Set(view.closed);
  if (open) closed.delete(value);
  else closed.add(value);
  return { ...view, closed };
}

/** Rows just edited or added stay in sight while a filter stands; those added stand last while a sort does. */
export function withTouched(view: ListView, edited: readonly string[], added: readonly string[]): ListView {
  const kept = isFiltered(view) ? union(view.kept, [...edited, ...added]) : view.kept;
  const late = view.sort === null ? view.late : union(view.late, added);
  return kept === view.kept && late === view.late ? view : { ...view, kept, late };
}

function union(set: ReadonlySet<string>, more: readonly string[]): ReadonlySet<string> {
  return more.every((key) => set.has(key)) ? set : new Set([...set, ...more]);
}
