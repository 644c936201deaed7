import { type Figure, type FigureUnit, figure, type WorkingInput } from '../figure.ts';
import { WORKING_ROWS_SHOWN } from './constants.ts';

export interface Summand {
  readonly name: string;
  readonly value: number | null;
  readonly from?: string;
}

/**
 * What do several figures of one unit add up to, and how is that shown?
 *
 * @param rule the sum in words
 * @param noun what the summands are, plural: "part rows"
 * @param summands their values; null is unknown
 * @returns the sum of the known ones; null when there are summands and none is known, 0 when there are none. The
 *   notes say how many are left out. A long list names its largest summands and gathers the rest into one line.
 *
 * No source: a definition of ours.
 * Example: 2, unknown and 3 give 5 with the note "1 of 3 part rows is unknown and left out of the sum."
 */
export function sumFigure({
  rule,
  unit,
  noun,
  summands,
  notes = [],
}: {
  readonly rule: string;
  readonly unit: FigureUnit;
  readonly noun: string;
  readonly summands: readonly Summand[];
  readonly notes?: readonly string[];
}): Figure {
  let total = 0;
  let known = 0;
  for (const { value } of summands) {
    if (value === null) continue;
    total += value;
    known++;
  }
  const unknown = summands.length - known;
  const said = [
    ...(unknown === 0
      ? []
      : [
          `${unknown} of ${summands.length} ${noun} ${unknown === 1 ? 'is' : 'are'} unknown and left out of the sum.`,
        ]),
    ...notes,
  ];
  return figure(known === 0 && unknown > 0 ? null : total, unit, {
    rule,
    inputs: listed(summands, unit, noun),
    ...(said.length === 0 ? {} : { notes: said }),
  });
}

function listed(summands: readonly Summand[], unit: FigureUnit, noun: string): readonly WorkingInput[] {
  if (summands.length <= WORKING_ROWS_SHOWN) return summands.map((summand) => ({ ...summand, unit }));
  const largestFirst = [...summands].sort(
    (left, right) =>
      (right.value ?? Number.POSITIVE_INFINITY) - (left.value ?? Number.POSITIVE_INFINITY) || 0,
  );
  const rest = largestFirst.slice(WORKING_ROWS_SHOWN - 1);
  return [
    ...largestFirst.slice(0, WORKING_ROWS_SHOWN - 1).map((summand) => ({ ...summand, unit })),
    {
      name: `the other ${rest.length} ${noun} together`,
      value: rest.reduce((sum, { value }) => sum + (value ?? 0), 0),
      unit,
    },
  ];
}
