/** Rows by a key of theirs, in the order in which they come. A definition. */
export function groupedBy<Row>(
  rows: readonly Row[],
  keyOf: (row: Row) => string,
): ReadonlyMap<string, readonly Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const own = groups.get(keyOf(row));
    if (own === undefined) groups.set(keyOf(row), [row]);
    else own.push(row);
  }
  return groups;
}
