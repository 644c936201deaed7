export interface CheapestFirst<Item> {
  readonly put: (item: Item, cost: number, tie: number) => void;
  /** Takes out the item of least cost, of equal ones that of least `tie`; null when there is none. */
  readonly take: () => { readonly item: Item; readonly cost: number } | null;
}

/**
 * A queue that gives out the cheapest item first.
 *
 * Result: an empty queue; putting in and taking out take steps in proportion to the logarithm of its size.
 * Source: J. W. J. Williams, "Algorithm 232: Heapsort", Communications of the ACM 7 (1964).
 */
export function cheapestFirst<Item>(): CheapestFirst<Item> {
  const heap: { readonly item: Item; readonly cost: number; readonly tie: number }[] = [];
  const before = (one: number, other: number): boolean => {
    const [left, right] = [heap[one], heap[other]];
    if (left === undefined || right === undefined) return left !== undefined;
    return left.cost < right.cost || (left.cost === right.cost && left.tie < right.tie);
  };
  const swap = (one: number, other: number): void => {
    const kept = heap[one] as (typeof heap)[number];
    heap[one] = heap[other] as (typeof heap)[number];
    heap[other] = kept;
  };
  return {
    put(item, cost, tie) {
      let at = heap.push({ item, cost, tie }) - 1;
      for (let parent = (at - 1) >> 1; at > 0 && before(at, parent); at = parent, parent = (at - 1) >> 1)
        swap(at, parent);
    },
    take() {
      const top = heap[0];
      if (top === undefined) return null;
      const last = heap.pop() as typeof top;
      if (heap.length > 0) {
        heap[0] = last;
        for (let at = 0; ; ) {
          const child = before(2 * at + 2, 2 * at + 1) ? 2 * at + 2 : 2 * at + 1;
          if (!before(child, at)) break;
          swap(at, child);
          at = child;
        }
      }
      return top;
    },
  };
}
