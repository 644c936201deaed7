/**
 * The most valuable way to fill one length, by search: for lengths too fine for a table.
 *
 * `capacity`, `lengths`: one unit. `values`: worth of one piece. `most`: how often each may be taken. `nodes`: search limit.
 * Result: value and cuts of the best fill found; `most`: no fill is worth more (equal when the search was complete).
 * Source: depth-first branch and bound with the fractional bound, E. Horowitz and S. Sahni, "Computing partitions with
 * applications to the knapsack problem", Journal of the ACM 21 (1974).
 */
export function searchFill(
  capacity: number,
  lengths: readonly number[],
  values: readonly number[],
  most: readonly number[],
  nodes: number,
): { value: number; most: number; cuts: Map<number, number> } {
  const rate = (piece: number): number => (values[piece] as number) / (lengths[piece] as number);
  const order = lengths
    .map((_, piece) => piece)
    .filter((piece) => (values[piece] as number) > 0 && (lengths[piece] as number) <= capacity)
    .sort((a, b) => rate(b) - rate(a));
  const taken = new Int32Array(order.length);
  let best = new Int32Array(order.length);
  let bestValue = 0;
  let visited = 0;
  let cutOff = 0;
  const search = (at: number, room: number, value: number): void => {
    if (value > bestValue + 1e-12) {
      bestValue = value;
      best = taken.slice();
    }
    const piece = order[at];
    if (piece === undefined) return;
    const bound = value + room * rate(piece);
    if (bound <= bestValue + 1e-12) return;
    if (visited++ >= nodes) {
      cutOff = Math.max(cutOff, bound);
      return;
    }
    const length = lengths[piece] as number;
    for (let times = Math.min(most[piece] as number, Math.floor(room / length)); times >= 0; times--) {
      taken[at] = times;
      search(at + 1, room - times * length, value + times * (values[piece] as number));
    }
    taken[at] = 0;
  };
  search(0, capacity, 0);
  const cuts = new Map<number, number>();
  for (const [at, piece] of order.entries())
    if ((best[at] as number) > 0) cuts.set(piece, best[at] as number);
  return { value: bestValue, most: Math.max(bestValue, cutOff), cuts };
}
