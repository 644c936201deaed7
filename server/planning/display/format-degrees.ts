import type { UnitSystem } from '../project-input.ts';
import { trimmedText } from './fixed-text.ts';

/** Degrees Fahrenheit in one degree Celsius, and where 0 C lies. Exact, by definition. */
const F_PER_C = 1.8;
const F_AT_0_C = 32;

/**
 * How are degrees printed in a sentence?
 *
 * `valueC`: C; `units`: US customary prints Fahrenheit; `kind`: a temperature, or a difference of two. Result: at most
 * one decimal, rounded to the nearest. Source: definition of the degree Fahrenheit.
 *
 * Example: 20 C is "20 °C" or "68 °F"; a difference of 5 C is "5 °C" or "9 °F".
 */
export function formatDegrees(valueC: number, units: UnitSystem, kind: 'temperature' | 'difference'): string {
  if (units === 'metric') return `${trimmedText(valueC, 1)} °C`;
  return `${trimmedText(valueC * F_PER_C + (kind === 'temperature' ? F_AT_0_C : 0), 1)} °F`;
}
