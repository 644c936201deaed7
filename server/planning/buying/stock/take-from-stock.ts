/** A can, roll or box, or several alike, in the product's unit. */
export interface StockPart {
  readonly from: 'onHand' | 'receipts';
  readonly id: string;
  readonly amount: number;
  /** YYYY-MM-DD; empty for what was there from the beginning, or when not known. */
  readonly arrivedOn: string;
  /** Opened before it came into this project: it is finished first. */
  readonly opened: boolean;
  /** Last good day; null when not known. */
  readonly goodUntil: string | null;
}

export interface TakenAmount {
  /** YYYY-MM-DD; empty when not known. */
  readonly date: string;
  readonly amount: number;
}

export interface StockLeft {
  /** What is left of each part, in the order given. */
  readonly left: readonly number[];
  /** Taken beyond all that was ever there. */
  readonly beyond: number;
}

/**
 * What is left of each part of a stock when so much was taken on such days?
 *
 * Each amount is taken from leftovers before deliveries, opened ones before whole ones, then by the earlier last good day and the earlier
 * arrival. What had not arrived yet on the day, and what was past its date, is taken from only when nothing else is left: the paper
 * may be behind, but what was used came from somewhere.
 *
 * @param parts of one product, amounts of 0 or more
 * @param taken amounts of 0 or more
 * @returns amounts of 0 or more; the parts' sum is that of what is left and of what was taken less `beyond`
 *
 * Source: a rule of ours. Valid range: any. Departures: none.
 * Example: a leftover of 0.7 L and a can of 0.946 L, 0.9 L taken: 0 L and 0.746 L are left.
 */
export function takeFromStock(parts: readonly StockPart[], taken: readonly TakenAmount[]): StockLeft {
  const left = parts.map(({ amount }) => amount);
  let beyond = 0;
  for (const { date, amount } of taken.toSorted((one, other) => (one.date < other.date ? -1 : 1))) {
    let open = amount;
    for (const at of inOrder(parts, date)) {
      const share = Math.min(open, left[at] ?? 0);
      left[at] = (left[at] ?? 0) - share;
      open -= share;
    }
    beyond += open;
  }
  return { left, beyond };
}

function inOrder(parts: readonly StockPart[], date: string): readonly number[] {
  const rank = ({ from, arrivedOn, opened, goodUntil }: StockPart): string =>
    [
      goodUntil !== null && date !== '' && goodUntil < date ? 1 : 0,
      date !== '' && arrivedOn > date ? 1 : 0,
      from === 'onHand' ? 0 : 1,
      opened ? 0 : 1,
      goodUntil ?? '9999-99-99',
      arrivedOn,
    ].join(' ');
  return parts
    .map((part, at) => ({ at, key: rank(part) }))
    .sort((one, other) => (one.key === other.key ? one.at - other.at : one.key < other.key ? -1 : 1))
    .map(({ at }) => at);
}
