/**
 * Which bin each piece goes into when every piece, in the order given, goes into the first bin with room for it.
 *
 * `lengths`: piece lengths, in any one unit, each at most `capacity`. `capacity`: length of every bin, same unit.
 * Result: for each piece its bin, numbered from 0 without gaps.
 * Source: first fit, with the first bin found in a tournament tree of remaining lengths (D. S. Johnson, "Fast
 * algorithms for bin packing", Journal of Computer and System Sciences 8, 1974): n pieces take O(n log n) steps.
 * Valid range: checked by the callers, which know the names of their inputs.
 * Example: firstFitInOrder([6, 5, 4, 5], 10) is [0, 1, 0, 1].
 */
export function firstFitInOrder(lengths: ArrayLike<number>, capacity: number): number[] {
  let leaves = 1;
  while (leaves < lengths.length) leaves *= 2;
  const room = new Float64Array(2 * leaves).fill(capacity);
  const binOf = new Array<number>(lengths.length).fill(0);
  for (let item = 0; item < lengths.length; item++) {
    const need = lengths[item] as number;
    // Every node holds the largest room below it, and there are as many bins as pieces: the walk always arrives.
    let node = 1;
    while (node < leaves) {
      node *= 2;
      if ((room[node] as number) < need) node += 1;
    }
    binOf[item] = node - leaves;
    room[node] = (room[node] as number) - need;
    for (node >>= 1; node >= 1; node >>= 1)
      room[node] = Math.max(room[2 * node] as number, room[2 * node + 1] as number);
  }
  return binOf;
}
