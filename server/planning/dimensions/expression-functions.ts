import { alike, type Dimensioned } from './dimensioned.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';

type Rounding = (steps: number) => number;

/** A count of steps this close to a whole one is that whole one: 23 5/8 in is 378 sixteenths, not 378.0000000001. */
const WHOLE_WITHIN = 1e-9;

const ROUNDINGS: ReadonlyMap<string, Rounding> = new Map([
  // Halves up, also where binary storage has left a half a hair short: 1.5 in over 1 in is 1.4999999999999998.
  ['round', (steps) => Math.floor(steps + 1 / 2 + WHOLE_WITHIN * Math.max(1, Math.abs(steps)))],
  ['floor', Math.floor],
  ['rounddown', Math.floor],
  ['ceil', Math.ceil],
  ['roundup', Math.ceil],
]);

/** Names a calculation may call. */
export const FUNCTION_NAMES: readonly string[] = ['min', 'max', ...ROUNDINGS.keys()];

/** Functions that round, to a whole unit of the project where no step is given. */
export const ROUNDING_NAMES: ReadonlySet<string> = new Set(ROUNDINGS.keys());

/** A function that rounds takes the value and the step. */
export const MOST_ROUNDING_VALUES = 2;

/**
 * What does a function in a calculation come to?
 *
 * `min` and `max` take one value or more. `round`, `floor` (or `rounddown`) and `ceil` (or `roundup`) take a value
 * and, if wanted, the step to round to; without one, lengths round to whole units of the project (`unitMm`, mm) and
 * numbers to whole numbers. `round` takes halves up. A refusal for other names, counts of values, and steps that
 * are not above zero. A rule of ours, after the habits of spreadsheets.
 *
 * Example: `roundup(613 mm, 5 mm)` is 615 mm.
 */
export function applyFunction(
  name: string,
  operands: readonly Dimensioned[],
  unitMm: number,
): Dimensioned | Refusal {
  const rounding = ROUNDINGS.get(name);
  if (rounding === undefined && name !== 'min' && name !== 'max')
    return refuse(
      'expression-invalid',
      `There is no function ${quoted(name)}.`,
      `The functions are ${FUNCTION_NAMES.join(', ')}.`,
    );
  const same = alike(operands, unitMm);
  if (!same.ok) return same;
  const { values, power, bare } = same;
  if (rounding === undefined)
    return { ok: true, value: name === 'min' ? Math.min(...values) : Math.max(...values), power, bare };

  const [value = 0, step = power === 1 ? unitMm : 1] = values;
  if (values.length > MOST_ROUNDING_VALUES)
    return refuse(
      'expression-invalid',
      `${quoted(name)} is given ${values.length} values.`,
      'Give it the value and, if wanted, the step to round to.',
    );
  if (!(step > 0))
    return refuse(
      'expression-invalid',
      `${quoted(name)} cannot round to steps of zero or less.`,
      'Give a step above zero.',
    );
  const steps = value / step;
  const nearest = Math.round(steps);
  const near = Math.abs(steps - nearest) <= WHOLE_WITHIN * Math.max(1, Math.abs(steps));
  return { ok: true, value: (near ? nearest : rounding(steps)) * step, power, bare };
}
