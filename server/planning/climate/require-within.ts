/**
 * Is a number a caller hands to a formula inside the range the formula is good for? Returns it, or throws.
 *
 * @param name the parameter as the caller knows it
 * @param value the number
 * @param low lowest allowed value, included
 * @param high highest allowed value, included
 * @param unit printed after the numbers; empty for counts and ratios
 * @returns the value, unchanged
 * @throws RangeError naming parameter, value, range and unit; NaN always fails
 *
 * Source: definition. Valid range: any numbers. Departures: none.
 * Example: requireWithin('airC', 21, -100, 200, 'C') is 21; with NaN it throws.
 */
export function requireWithin(name: string, value: number, low: number, high: number, unit: string): number {
  if (value >= low && value <= high && Number.isFinite(value)) return value;
  const suffix = unit === '' ? '' : ` ${unit}`;
  const range =
    high === Number.POSITIVE_INFINITY
      ? `a number not below ${low}${suffix}`
      : `between ${low} and ${high}${suffix}`;
  throw new RangeError(`${name} must be ${range}, got ${value}`);
}
