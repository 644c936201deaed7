import type { NamedSize } from '../project-input.ts';

/**
 * In which order can the named sizes be worked out, and which depend on themselves?
 *
 * `rows`: the sizes. `named`: row by key of its name. `usesOf`: keys a row uses. Result: every row that is not part
 * of a loop, each after the rows it uses (rows that hang on a loop come last), and for each row in a loop one
 * shortest loop through it, starting with itself. Method: Kahn 1962 (topological sorting); what is left over holds
 * the loops, found by breadth-first search from each row. No units.
 *
 * Example: a = b + 1, b = 5 gives the order b, a; a = b, b = a gives no order and the loops a-b and b-a.
 */
export function sizeOrder(
  rows: readonly NamedSize[],
  named: ReadonlyMap<string, NamedSize>,
  usesOf: (row: NamedSize) => readonly string[],
): { readonly order: readonly NamedSize[]; readonly cycles: ReadonlyMap<NamedSize, readonly NamedSize[]> } {
  const uses = new Map(rows.map((row) => [row, usesOf(row).flatMap((key) => named.get(key) ?? [])] as const));
  const usedBy = new Map<NamedSize, NamedSize[]>(rows.map((row) => [row, []]));
  const waiting = new Map<NamedSize, number>();
  for (const [row, used] of uses) {
    waiting.set(row, used.length);
    for (const one of used) usedBy.get(one)?.push(row);
  }

  const order = rows.filter((row) => waiting.get(row) === 0);
  for (let next = 0; next < order.length; next++)
    for (const user of usedBy.get(order[next] as NamedSize) ?? []) {
      const left = (waiting.get(user) ?? 0) - 1;
      waiting.set(user, left);
      if (left === 0) order.push(user);
    }

  const cycles = new Map<NamedSize, readonly NamedSize[]>();
  for (const row of rows) {
    if (waiting.get(row) === 0) continue;
    const loop = loopThrough(row, uses);
    if (loop === null) order.push(row);
    else cycles.set(row, loop);
  }
  return { order, cycles };
}

function loopThrough(
  start: NamedSize,
  uses: ReadonlyMap<NamedSize, readonly NamedSize[]>,
): readonly NamedSize[] | null {
  const cameFrom = new Map<NamedSize, NamedSize>();
  const queue = [start];
  for (let next = 0; next < queue.length; next++) {
    const row = queue[next] as NamedSize;
    for (const used of uses.get(row) ?? []) {
      if (used === start) {
        const loop = [row];
        for (let at = row; at !== start; loop.push(at)) at = cameFrom.get(at) as NamedSize;
        return loop.reverse();
      }
      if (!cameFrom.has(used)) {
        cameFrom.set(used, row);
        queue.push(used);
      }
    }
  }
  return null;
}
