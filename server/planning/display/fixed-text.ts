/**
 * How is a number printed with a fixed count of decimals?
 *
 * `value`: any finite number. `decimals`: 0 to 10. Result: text with a decimal point and no grouping, so that it can
 * be typed back; rounded half away from zero on the decimal digits; never "-0". Throws RangeError for a value that
 * is not finite. No source: a definition.
 *
 * Example: `fixedText(2.5, 0)` is "3", `fixedText(-0.04, 1)` is "0.0".
 */
export function fixedText(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`fixedText: value must be finite, got ${value}`);
  const text = roundHalfAway(Math.abs(value), decimals).toFixed(decimals);
  return value < 0 && /[1-9]/.test(text) ? `-${text}` : text;
}

/**
 * The same without trailing zeros: `trimmedText(12.5, 1)` is "12.5", `trimmedText(600, 1)` is "600".
 *
 * Units, range and source as for `fixedText`.
 */
export function trimmedText(value: number, decimals: number): string {
  const text = fixedText(value, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** Shifts through the decimal exponent, so that 1.005 rounds to 1.01 as it is written, not as it is stored. */
function roundHalfAway(value: number, decimals: number): number {
  const [digits = '0', exponent = '0'] = String(value).split('e');
  const shifted = Math.round(Number(`${digits}e${Number(exponent) + decimals}`));
  const [whole = '0', wholeExponent = '0'] = String(shifted).split('e');
  return Number(`${whole}e${Number(wholeExponent) - decimals}`);
}
