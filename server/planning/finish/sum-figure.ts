import { type Figure, type FigureUnit, figure, type WorkingInput } from '../figure.ts';
import { WORKING_ROWS_SHOWN } from './constants.ts';
import { sumKnown } from './sum-known.ts';

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
  const { value, notes: leftOut } = sumKnown(summands, noun);
  const said = [...leftOut, ...notes];
  return figure(value, unit, {
    rule,
    inputs: listed(summands, unit, noun),
    ...(said.length === 0 ? {} : { notes: said }),
  });
}

function listed(summands: readonly Summand[], unit: FigureUnit, noun: string): readonly WorkingInput[] {
  if (summands.length <= WORKING_ROWS_SHOWN) return summands.map((summand) => ({ ...summand, unit }));
  const named = largest(summands, WORKING_ROWS_SHOWN - 1);
  const apart = new Set(named);
  let rest = 0;
  for (const summand of summands) if (!apart.has(summand)) rest += summand.value ?? 0;
  return [
    ...named.map((summand) => ({ ...summand, unit })),
    { name: `the other ${summands.length - named.length} ${noun} together`, value: rest, unit },
  ];
}

/** Unknown ones count as largest, so that they are named. Equal ones keep their order. */
function largest(summands: readonly Summand[], most: number): readonly Summand[] {
  const found: Summand[] = [];
  const weight = ({ value }: Summand): number => value ?? Number.POSITIVE_INFINITY;
  for (const summand of summands) {
    const least = found.at(-1);
    if (found.length === most && least !== undefined && weight(summand) <= weight(least)) continue;
    const at = found.findIndex((rival) => weight(rival) < weight(summand));
    found.splice(at < 0 ? found.length : at, 0, summand);
    if (found.length > most) found.pop();
  }
  return found;
}
