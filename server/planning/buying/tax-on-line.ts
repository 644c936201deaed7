/** Tax rates are read to a ten-thousandth of a percent, so that the product with whole minor units is exact. */
const RATE_STEPS = 10_000;
const PERCENT = 100;

/**
 * How much tax falls on one line of the buy list?
 *
 * @param lineMinor cost of the line without tax, whole minor units, 0 or more
 * @param taxPercent percent, 0 or more, at most 1000
 * @returns whole minor units, half up
 *
 * Source: common practice, no source (tax per line, commercial rounding). Departure: none. It reckons in whole
 * numbers throughout, so a half is a true half.
 * Example: 147.00 at 8 %: 11.76, together 158.76.
 */
export function taxOnLine({
  lineMinor,
  taxPercent,
}: {
  readonly lineMinor: number;
  readonly taxPercent: number;
}): number {
  if (!(Number.isSafeInteger(lineMinor) && lineMinor >= 0))
    throw new RangeError(`taxOnLine: lineMinor must be whole minor units of at least 0, got ${lineMinor}`);
  if (!(taxPercent >= 0 && taxPercent <= 10 * PERCENT))
    throw new RangeError(
      `taxOnLine: taxPercent must be at least 0 and at most 1000 percent, got ${taxPercent}`,
    );
  const whole = BigInt(RATE_STEPS * PERCENT);
  const scaled = BigInt(lineMinor) * BigInt(Math.round(taxPercent * RATE_STEPS));
  return Number((scaled * 2n + whole) / (whole * 2n));
}
