/**
 * Which whole number of minor units is a fraction of an amount of money?
 *
 * @param minor whole minor units; below 0 for money that comes back
 * @param numerator @param denominator whole numbers, numerator at least 0, denominator above 0
 * @returns minor x numerator / denominator, a half rounded away from 0, so that what comes back rounds as what went out.
 *   Reckoned in whole numbers throughout, so a half is a true half.
 *
 * Source: common practice, no source (commercial rounding). Departure: none.
 * Example: a half of 101 is 51; a half of -101 is -51.
 */
export function fractionHalfUp(minor: number, numerator: number, denominator: number): number {
  if (!Number.isInteger(minor))
    throw new RangeError(`fractionHalfUp: minor must be whole minor units, got ${minor}`);
  if (!(Number.isSafeInteger(numerator) && numerator >= 0))
    throw new RangeError(`fractionHalfUp: numerator must be a whole number of at least 0, got ${numerator}`);
  if (!(Number.isSafeInteger(denominator) && denominator > 0))
    throw new RangeError(`fractionHalfUp: denominator must be a whole number above 0, got ${denominator}`);
  const product = BigInt(Math.abs(minor)) * BigInt(numerator);
  const whole = BigInt(denominator);
  const rounded = Number((product * 2n + whole) / (whole * 2n));
  return minor < 0 && rounded !== 0 ? -rounded : rounded;
}
