import { shareWhole } from './share-whole.ts';

/**
 * How much of what was paid for an order belongs to each of its headings?
 *
 * What was paid, refunds taken off, is shared in proportion to what each heading still comes to, until that is paid in
 * full; what was paid beyond is shared in proportion to what each heading had sent back, since that is what is to come
 * back. An order with every heading paid in full is therefore paid in full under each.
 *
 * @param paidMinor payments less refunds, whole minor units
 * @param keptMinor per heading what is ordered and kept, with tax, whole minor units of at least 0
 * @param returnedMinor per heading what was sent back, likewise
 * @returns per heading, whole minor units whose sum is `paidMinor`; null when no heading comes to anything
 *
 * Source: rule of ours on `shareWhole` (largest remainder method).
 * Example: 150 paid for headings of 100 and 200 is 50 and 100; 300 paid of which 200 were then sent back under the second:
 *   100 and 200, so that 200 are to come back there and nothing under the first.
 */
export function shareOrderPayment(
  paidMinor: number,
  keptMinor: readonly number[],
  returnedMinor: readonly number[],
): readonly number[] | null {
  const kept = keptMinor.reduce((left, right) => left + right, 0);
  const upToKept = Math.min(paidMinor, kept);
  const gross = keptMinor.map((minor, index) => minor + (returnedMinor[index] ?? 0));
  const base = upToKept === 0 ? keptMinor.map(() => 0) : shareFirst(upToKept, [keptMinor, gross]);
  const beyond =
    paidMinor === upToKept
      ? keptMinor.map(() => 0)
      : shareFirst(paidMinor - upToKept, [returnedMinor, keptMinor]);
  if (base === null || beyond === null) return null;
  return base.map((minor, index) => minor + (beyond[index] ?? 0));
}

/** Shared by the first weights that say anything. */
function shareFirst(total: number, weights: readonly (readonly number[])[]): readonly number[] | null {
  for (const those of weights) {
    const shares = shareWhole(total, those);
    if (shares !== null) return shares;
  }
  return null;
}
