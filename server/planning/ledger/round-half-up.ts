/** This much short of a half counts as the half, so that 1.005 x 100 = 100.49999999999999 rounds as 100.5. */
const DUST = 1e-6;

/**
 * Which whole number of minor units is an amount of money?
 *
 * @param minor amount in minor units, not below 0
 * @returns the nearest whole number; a half goes up
 *
 * Source: common practice, no source (commercial rounding). Departure: none.
 * Example: 82.5 is 83; 82.4999999 (dust) is 83 too; 82.49 is 82.
 */
export function roundHalfUp(minor: number): number {
  if (!(minor >= 0 && minor < Number.MAX_SAFE_INTEGER))
    throw new RangeError(`roundHalfUp: minor must be at least 0 and a safe number, got ${minor}`);
  return Math.floor(minor + 1 / 2 + DUST);
}
