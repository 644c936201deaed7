import { type Figure, type FigureUnit, figure, type WorkingInput } from '../figure.ts';

/**
 * A sum of figures that says what it leaves out: an unknown summand does not count and is mentioned in the notes.
 *
 * `summandName`: what is added, in the plural ("part rows"); `inputs`: what the working lists instead of the bare
 * number of summands, one line each. Result in `unit`, which all summands share; null when there are summands and
 * none of them is known, 0 when there are none. No source: a sum only.
 *
 * Example: 2 m + unknown + 1.5 m is 3.5 m, with the note that 1 of 3 is left out.
 */
export function sumKnown(
  rule: string,
  unit: FigureUnit,
  summandName: string,
  summands: readonly Figure[],
  inputs?: readonly WorkingInput[],
): Figure {
  let sum = 0;
  let known = 0;
  for (const { value } of summands) {
    if (value === null) continue;
    sum += value;
    known++;
  }
  const unknown = summands.length - known;
  const total = summands.length > 0 && known === 0 ? null : sum;
  return figure(total, unit, {
    rule,
    inputs: inputs ?? [{ name: summandName, value: known, unit: 'pcs' }],
    ...(unknown > 0
      ? { notes: [`${unknown} of ${summands.length} ${summandName} are unknown and left out of the sum.`] }
      : {}),
  });
}
