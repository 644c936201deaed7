/** Keeps 84 x 1.1 / 30.8, which is 3, from becoming 4 by the last bit. */
const ROUNDING = 1e-9;

/**
 * How many sheets an area comes to with a flat allowance for waste, and which allowance would tip the count.
 *
 * `netM2`: area of the parts, m2. `sheetM2`: area of one sheet, m2. `allowance`: share added to the net area.
 * Result: whole sheets, rounded up; and `tipsAt`, the largest allowance this count still covers. An estimate by area:
 * parts of awkward size can need more, which only a cutting plan shows. Common practice, no source.
 * Valid range: net 0 or more, sheet above 0, allowance 0 or more. `tipsAt` is Infinity for a net of 0.
 * Example: sheetsForAllowance(84, 32, 0.1) is { sheets: 3, tipsAt: 0.143 }: up to 14.3 % three sheets do.
 */
export function sheetsForAllowance(
  netM2: number,
  sheetM2: number,
  allowance: number,
): { sheets: number; tipsAt: number } {
  if (!(netM2 >= 0 && Number.isFinite(netM2)))
    throw new RangeError(`sheetsForAllowance: netM2 must be 0 or more, got ${netM2}`);
  if (!(sheetM2 > 0 && Number.isFinite(sheetM2)))
    throw new RangeError(`sheetsForAllowance: sheetM2 must be above 0, got ${sheetM2}`);
  if (!(allowance >= 0 && Number.isFinite(allowance)))
    throw new RangeError(`sheetsForAllowance: allowance must be 0 or more, got ${allowance}`);
  if (netM2 === 0) return { sheets: 0, tipsAt: Number.POSITIVE_INFINITY };
  const sheets = Math.ceil(((netM2 * (1 + allowance)) / sheetM2) * (1 - ROUNDING));
  return { sheets, tipsAt: (sheets * sheetM2) / netM2 - 1 };
}
