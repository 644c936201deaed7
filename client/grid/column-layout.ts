/**
 * How a reader has arranged the columns of a sheet. Only what was decided is kept: a column nobody touched follows the
 * sheet's own ideas of place, width and visibility, also after those have changed.
 */

export interface ColumnLayout {
  /** Ids of the columns in the order wanted; empty for the usual order. */
  readonly order: readonly string[];
  readonly visible: Readonly<Record<string, boolean>>;
  readonly widths: Readonly<Record<string, number>>;
}

export const USUAL_LAYOUT: ColumnLayout = { order: [], visible: {}, widths: {} };

/** What the order of columns depends on: pinned ones keep their place, those of one group stand together. */
export interface PlacedColumn {
  readonly id: string;
  readonly group?: string;
  readonly pinned?: boolean;
}

/**
 * All ids in the order they stand in: the wanted order, as far as it names columns there are. A group stands where the
 * first of its columns is wanted; a column the order does not know stands behind its usual neighbour.
 */
export function columnOrder(columns: readonly PlacedColumn[], wanted: readonly string[]): string[] {
  return unitsOf(columns, placed(columns, wanted)).flat();
}

/**
 * The order with a column one place further on or back among its like: columns of one group within it, groups and
 * single columns past each other. Null at the end of the way.
 */
export function movedColumn(
  columns: readonly PlacedColumn[],
  wanted: readonly string[],
  id: string,
  step: 1 | -1,
): string[] | null {
  return moved(columns, wanted, (units) => units.find((unit) => unit.includes(id)) ?? [], id, step);
}

/** The same for a whole group. */
export function movedGroup(
  columns: readonly PlacedColumn[],
  wanted: readonly string[],
  group: string,
  step: 1 | -1,
): string[] | null {
  const first = columns.find((column) => column.group === group);
  return first === undefined ? null : moved(columns, wanted, () => [], first.id, step);
}

function moved(
  columns: readonly PlacedColumn[],
  wanted: readonly string[],
  siblingsOf: (units: readonly string[][]) => readonly string[],
  id: string,
  step: 1 | -1,
): string[] | null {
  const units = unitsOf(columns, placed(columns, wanted));
  const siblings = siblingsOf(units);
  if (siblings.length > 1) {
    const next = swapped(siblings, siblings.indexOf(id), step);
    return next === null ? null : units.flatMap((unit) => (unit === siblings ? next : unit));
  }
  const free = units.filter((unit) => !isPinned(columns, unit));
  const next = swapped(
    free,
    free.findIndex((unit) => unit.includes(id)),
    step,
  );
  return next === null ? null : [...units.filter((unit) => isPinned(columns, unit)), ...next].flat();
}

function placed(columns: readonly PlacedColumn[], wanted: readonly string[]): string[] {
  const known = new Set(columns.map(({ id }) => id));
  const order = [...new Set(wanted)].filter((id) => known.has(id));
  columns.forEach(({ id }, index) => {
    if (order.includes(id)) return;
    const before = columns[index - 1];
    order.splice(before === undefined ? 0 : order.indexOf(before.id) + 1, 0, id);
  });
  return order;
}

/** The order cut into what moves as one: a group's columns together, every other column alone; pinned ones first. */
function unitsOf(columns: readonly PlacedColumn[], order: readonly string[]): string[][] {
  const byId = new Map(columns.map((column) => [column.id, column]));
  const units = new Map<string, string[]>();
  for (const id of order) {
    const group = byId.get(id)?.group;
    const key = group === undefined ? `column ${id}` : `group ${group}`;
    units.set(key, [...(units.get(key) ?? []), id]);
  }
  const all = [...units.values()];
  const usual = (unit: readonly string[]): number => columns.findIndex(({ id }) => id === unit[0]);
  const pinned = all.filter((unit) => isPinned(columns, unit)).toSorted((a, b) => usual(a) - usual(b));
  return [...pinned, ...all.filter((unit) => !isPinned(columns, unit))];
}

function isPinned(columns: readonly PlacedColumn[], unit: readonly string[]): boolean {
  return columns.some(({ id, pinned }) => pinned === true && unit.includes(id));
}

function swapped<Item>(items: readonly Item[], at: number, step: 1 | -1): Item[] | null {
  const one = items[at];
  const other = items[at + step];
  if (one === undefined || other === undefined) return null;
  return items.map((item, index) => (index === at ? other : index === at + step ? one : item));
}
