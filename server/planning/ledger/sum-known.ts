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
  const values = summands.flatMap(({ value }) => (value === null ? [] : [value]));
  const unknown = summands.length - values.length;
  const total =
    summands.length > 0 && values.length === 0 ? null : values.reduce((left, right) => left + right, 0);
  return figure(total, unit, {
    rule,
    inputs: inputs ?? [{ name: summandName, value: values.length, unit: 'pcs' }],
    ...(unknown > 0
      ? { notes: [`${unknown} of ${summands.length} ${summandName} are unknown and left out of the sum.`] }
      : {}),
  });
}
