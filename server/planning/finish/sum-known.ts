export interface KnownSum {
  /** Null when there are summands and none is known; 0 when there are none. */
  readonly value: number | null;
  /** What is left out, in words. */
  readonly notes: readonly string[];
}

/**
 * What do the known ones of several numbers add up to, and how many are left out?
 *
 * @param summands numbers of one unit; null is unknown
 * @param noun what they are, plural: "part rows"
 *
 * No source: a definition of ours.
 * Example: 2, unknown and 3 give 5 with the note "1 of 3 part rows is unknown and left out of the sum."
 */
export function sumKnown(summands: readonly { readonly value: number | null }[], noun: string): KnownSum {
  let total = 0;
  let known = 0;
  for (const { value } of summands) {
    if (value === null) continue;
    total += value;
    known++;
  }
  const unknown = summands.length - known;
  const verb = unknown === 1 ? 'is' : 'are';
  return {
    value: known === 0 && unknown > 0 ? null : total,
    notes:
      unknown === 0
        ? []
        : [`${unknown} of ${summands.length} ${noun} ${verb} unknown and left out of the sum.`],
  };
}
