import type { UnitSystem } from '../project-input.ts';
import { FLUID_OUNCES_PER_QUART, L_PER_US_GALLON, QUARTS_PER_GALLON, UNKNOWN_TEXT } from './constants.ts';
import { fixedText } from './fixed-text.ts';

interface Step {
  readonly symbol: string;
  readonly litres: number;
  readonly decimals: number;
}

const L_PER_QUART = L_PER_US_GALLON / QUARTS_PER_GALLON;

/** Largest first; a volume prints in the first unit of which it is at least one after rounding. */
const METRIC_STEPS: readonly Step[] = [
  { symbol: 'L', litres: 1, decimals: 2 },
  { symbol: 'mL', litres: 0.001, decimals: 0 },
];
const US_STEPS: readonly Step[] = [
  { symbol: 'gal', litres: L_PER_US_GALLON, decimals: 2 },
  { symbol: 'qt', litres: L_PER_QUART, decimals: 2 },
  { symbol: 'fl oz', litres: L_PER_QUART / FLUID_OUNCES_PER_QUART, decimals: 1 },
];

/**
 * How is a volume of finish printed?
 *
 * `volumeL`: litres; null prints as "unknown". Result: litres (two decimals) or whole millilitres below one litre;
 * in US customary units gallons, quarts or fluid ounces, whichever is the largest that makes at least one. Under
 * one millilitre or ounce one more decimal is shown. Source of the conversion: US gallon = 231 in3, exact.
 *
 * Example: 0.946352946 L is "946 mL" or "1.00 qt".
 */
export function formatVolume(volumeL: number | null, format: { readonly units: UnitSystem }): string {
  if (volumeL === null) return UNKNOWN_TEXT;
  const steps = format.units === 'metric' ? METRIC_STEPS : US_STEPS;
  const step =
    steps.find(({ litres, decimals }) => Number(fixedText(Math.abs(volumeL) / litres, decimals)) >= 1) ??
    (steps[steps.length - 1] as Step);
  const value = volumeL / step.litres;
  const tiny = step.litres === steps.at(-1)?.litres && value !== 0 && Math.abs(value) < 1 ? 1 : 0;
  return `${fixedText(value, step.decimals + tiny)} ${step.symbol}`;
}
