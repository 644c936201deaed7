import { firstFitInOrder } from './first-fit-in-order.ts';

/** Lengths closer than this are one length: adding many fractions of an inch must not lose a piece that fits. */
const SAME_LENGTH_MM = 1e-6;

/**
 * Which bin (bar, board, roll) each piece goes into when the longest piece is placed first, always in the first bin
 * with room for it.
 *
 * `lengths`: piece lengths, mm (any one unit will do). `capacity`: length of every bin, same unit. `kerfMm`: width
 * lost between neighbouring pieces of one bin, same unit; none after the last piece.
 * Result: for each piece its bin, numbered from 0 without gaps.
 * Source: first fit decreasing, D. S. Johnson, "Near-optimal bin packing algorithms", MIT thesis, 1973: never more
 * than 11/9 of the least number of bins plus a constant. n pieces take O(n log n)
 * steps.
 * Valid range: every length above 0 and at most `capacity`; capacity finite; kerf 0 or more. Else RangeError.
 * Example: firstFitDecreasing([6, 4, 5, 5], 10) is [0, 0, 1, 1].
 */
export function firstFitDecreasing(lengths: readonly number[], capacity: number, kerfMm = 0): number[] {
  if (!(capacity > 0 && Number.isFinite(capacity)))
    throw new RangeError(`firstFitDecreasing: capacity must be above 0 mm, got ${capacity}`);
  if (!(kerfMm >= 0 && Number.isFinite(kerfMm)))
    throw new RangeError(`firstFitDecreasing: kerfMm must be 0 or more, got ${kerfMm}`);
  for (const length of lengths)
    if (!(length > 0 && length <= capacity + SAME_LENGTH_MM))
      throw new RangeError(
        `firstFitDecreasing: a length must be above 0 and at most ${capacity}, got ${length}`,
      );

  // A piece and the cut after it take length + kerf of capacity + kerf: the last cut falls outside the bin.
  const order = longestFirst(lengths);
  const needs = Float64Array.from(order, (item) => (lengths[item] as number) + kerfMm);
  const bins = firstFitInOrder(needs, capacity + kerfMm + SAME_LENGTH_MM);
  const binOf = new Array<number>(lengths.length).fill(0);
  for (const [place, item] of order.entries()) binOf[item] = bins[place] as number;
  return binOf;
}

/** Indices by falling length; equal lengths keep their order. */
function longestFirst(lengths: readonly number[]): Uint32Array {
  const order = Uint32Array.from(lengths, (_, item) => item);
  return order.sort((left, right) => (lengths[right] as number) - (lengths[left] as number) || left - right);
}
