import type { ProductUnit } from '../product.ts';
import type { UnitSystem } from '../project-input.ts';
import { UNKNOWN_TEXT } from './constants.ts';
import { formatCount } from './format-count.ts';
import { formatMetres } from './format-metres.ts';
import { formatVolume } from './format-volume.ts';

/**
 * How is an amount of a product printed?
 *
 * `amount`: in the product's own unit `unit`; null prints as "unknown". Result: liquids and lengths in the units of the
 * project, pieces and grams as they are counted. Source of the conversions: those of `formatVolume` and `formatMetres`.
 *
 * Example: 0.946352946 of a product counted in litres is "946 mL" or "1.00 qt".
 */
export function formatAmount(
  amount: number | null,
  unit: ProductUnit,
  format: { readonly units: UnitSystem },
): string {
  if (amount === null) return UNKNOWN_TEXT;
  if (unit === 'L') return formatVolume(amount, format);
  if (unit === 'm') return formatMetres(amount, format);
  return `${formatCount(amount)} ${unit}`;
}
