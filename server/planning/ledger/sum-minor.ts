import { type Figure, figure } from '../figure.ts';
import { type Summand, sumFigure } from '../finish/sum-figure.ts';

/**
 * What do several amounts of money add up to, and how is that shown?
 *
 * @param rule the sum in words
 * @param noun what the summands are, plural: "order lines"
 * @param summands whole minor units; null is unknown
 * @returns whole minor units, as `sumFigure`; unknown, with a note, where the sum is more than can be kept exactly
 *
 * Source: definition. Sums of whole numbers, so nothing is rounded here.
 * Example: 1250, unknown and 300 are 1550, with the note that one is left out.
 */
export function sumMinor(
  rule: string,
  noun: string,
  summands: readonly Summand[],
  notes: readonly string[] = [],
): Figure {
  const sum = sumFigure({ rule, unit: 'minor', noun, summands, notes });
  if (sum.value === null || Number.isSafeInteger(sum.value)) return sum;
  return figure(null, 'minor', {
    ...sum.working,
    notes: [...(sum.working.notes ?? []), 'The sum is too large to be kept to the last unit.'],
  });
}
