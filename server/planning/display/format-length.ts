import type { InchStyle, UnitSystem } from '../project-input.ts';
import { APPROXIMATE_FROM_MM, APPROXIMATE_MARK, MM_PER_INCH, UNKNOWN_TEXT } from './constants.ts';
import { trimmedText } from './fixed-text.ts';

export interface LengthFormat {
  readonly units: UnitSystem;
  readonly inchStyle: InchStyle;
  /** Finest fraction printed, a whole number from 1 to 128. */
  readonly inchDenominator: number;
}

/** Decimals printed for millimetres and for decimal inches. A rule of ours. */
const MM_DECIMALS = 1;
const INCH_DECIMALS = 3;

/**
 * How is a length printed in this project?
 *
 * `lengthMm`: mm, any sign; null prints as "unknown". Result: millimetres with at most one decimal, or inches as a
 * mixed fraction in lowest terms (`23 5/8"`) or with at most three decimals (`23.625"`). A fraction that is more
 * than 0.01 mm off is marked with "≈". What is printed can be typed back and reads as the same length to the
 * printed precision. Throws RangeError for a denominator that is not a whole number from 1 to 128. No source: a
 * definition.
 *
 * Example: 600 mm at 1/8 in is `≈23 5/8"`, since 23 5/8 in is 600.075 mm.
 */
export function formatLength(lengthMm: number | null, format: LengthFormat): string {
  if (lengthMm === null) return UNKNOWN_TEXT;
  if (format.units === 'metric') return `${trimmedText(lengthMm, MM_DECIMALS)} mm`;
  if (format.inchStyle === 'decimal') return `${trimmedText(lengthMm / MM_PER_INCH, INCH_DECIMALS)}"`;
  return inchFraction(lengthMm, format.inchDenominator);
}

function inchFraction(lengthMm: number, denominator: number): string {
  if (!(Number.isInteger(denominator) && denominator >= 1 && denominator <= 128))
    throw new RangeError(
      `formatLength: inchDenominator must be a whole number from 1 to 128, got ${denominator}`,
    );
  if (!Number.isFinite(lengthMm))
    throw new RangeError(`formatLength: lengthMm must be finite, got ${lengthMm}`);
  const steps = Math.round((Math.abs(lengthMm) / MM_PER_INCH) * denominator);
  const printedMm = (steps / denominator) * MM_PER_INCH;
  const approximate = Math.abs(Math.abs(lengthMm) - printedMm) > APPROXIMATE_FROM_MM ? APPROXIMATE_MARK : '';
  const sign = lengthMm < 0 && steps > 0 ? '-' : '';
  const whole = Math.floor(steps / denominator);
  const rest = steps % denominator;
  if (rest === 0) return `${approximate}${sign}${whole}"`;
  const divisor = greatestCommonDivisor(rest, denominator);
  const fraction = `${rest / divisor}/${denominator / divisor}`;
  return `${approximate}${sign}${whole > 0 ? `${whole} ` : ''}${fraction}"`;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
