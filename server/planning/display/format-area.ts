import type { UnitSystem } from '../project-input.ts';
import { M2_PER_FT2, UNKNOWN_TEXT } from './constants.ts';
import { fixedText } from './fixed-text.ts';

/** Below this many of the printed unit, two more decimals are shown, so that a narrow edge does not print as 0. */
const SMALL_AREA = 0.1;

/**
 * How is an area printed?
 *
 * `areaM2`: m2; null prints as "unknown". Result: square metres with two decimals or square feet with one, and two
 * decimals more below 0.1. Rounded to the nearest. Source of the conversion: 1 ft = 0.3048 m, exact.
 *
 * Example: 2.9728 m2 (one 8 by 4 ft sheet) is "2.97 m²" or "32.0 ft²".
 */
export function formatArea(areaM2: number | null, format: { readonly units: UnitSystem }): string {
  if (areaM2 === null) return UNKNOWN_TEXT;
  const metric = format.units === 'metric';
  const value = metric ? areaM2 : areaM2 / M2_PER_FT2;
  const decimals = metric ? 2 : 1;
  const small = value !== 0 && Math.abs(value) < SMALL_AREA;
  return `${fixedText(value, small ? decimals + 2 : decimals)} ${metric ? 'm²' : 'ft²'}`;
}
