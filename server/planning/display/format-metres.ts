import type { UnitSystem } from '../project-input.ts';
import { M_PER_FOOT, UNKNOWN_TEXT } from './constants.ts';
import { fixedText } from './fixed-text.ts';

/**
 * How is a run of banding or board printed?
 *
 * `lengthM`: metres; null prints as "unknown". Result: metres with two decimals, or feet with one. Rounded to the
 * nearest. Source of the conversion: 1 ft = 0.3048 m, exact.
 *
 * Example: 21.336 m is "21.34 m" or "70.0 ft".
 */
export function formatMetres(lengthM: number | null, format: { readonly units: UnitSystem }): string {
  if (lengthM === null) return UNKNOWN_TEXT;
  return format.units === 'metric'
    ? `${fixedText(lengthM, 2)} m`
    : `${fixedText(lengthM / M_PER_FOOT, 1)} ft`;
}
