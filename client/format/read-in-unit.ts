import { type NumberRange, readOptionalNumber } from './read-number.ts';
import { type Reading, understood } from './reading.ts';

/**
 * What is typed, in the first of the units? `units` says how much one of each is; a bare number is in `bare`. Nothing
 * typed is null: not known. The range is in the first unit.
 *
 * Example: "12 ft" with { m: 1, ft: 0.3048 } is 3.6576.
 */
export function readInUnit<Unit extends string>(
  typed: string,
  units: Readonly<Record<Unit, number>>,
  bare: NoInfer<Unit>,
  range: NumberRange,
): Reading<number | null> {
  const text = typed.trim().toLowerCase();
  const longest = (Object.keys(units) as Unit[]).toSorted((one, other) => other.length - one.length);
  const written = longest.find((unit) => text.endsWith(unit.toLowerCase()));
  const amount = readOptionalNumber(written === undefined ? text : text.slice(0, -written.length));
  if (!amount.ok || amount.value === null) return amount;
  const value = Number((amount.value * units[written ?? bare]).toPrecision(12));
  const inRange = readOptionalNumber(String(value), range);
  return inRange.ok ? understood(value) : inRange;
}
