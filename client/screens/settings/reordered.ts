/** The list with the item at `from` moved to `to`; both ends are the list's own. The list given is left alone. */
export function reordered<Item>(list: readonly Item[], from: number, to: number): readonly Item[] {
  if (from < 0 || from >= list.length || to < 0 || to >= list.length) return list;
  const moved = [...list];
  const [item] = moved.splice(from, 1);
  return item === undefined ? list : [...moved.slice(0, to), item, ...moved.slice(to)];
}
