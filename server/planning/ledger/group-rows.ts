/**
 * Which rows belong together?
 *
 * @param keyOf the key of a row
 * @returns the rows by key, keys and rows in the order in which they come
 *
 * Source: definition. Example: the lines of an order by the order's id.
 */
export function groupRows<Row>(
  rows: readonly Row[],
  keyOf: (row: Row) => string,
): ReadonlyMap<string, readonly Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}
