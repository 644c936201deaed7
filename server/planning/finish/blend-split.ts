import { requireNumber } from './require-number.ts';

/**
 * How do the litres of a blend fall on its components?
 *
 * @param litres blend without thinner, L, 0 or more
 * @param parts parts by volume of each component, 0 or more, not all 0
 * @returns litres of each component in the same order; they add up to the blend
 *
 * Source: definition of parts by volume. Departures: none (volumes are taken to add up, which mixed liquids of one
 * family do to within a percent: common practice, no source).
 * Example: 0.9 L of 2 : 1 is 0.6 L and 0.3 L.
 */
export function blendSplit({
  litres,
  parts,
}: {
  readonly litres: number;
  readonly parts: readonly number[];
}): readonly number[] {
  requireNumber('blendSplit: litres', litres, { atLeast: 0 }, 'L');
  for (const part of parts) requireNumber('blendSplit: parts', part, { atLeast: 0 }, 'parts');
  const whole = parts.reduce((sum, part) => sum + part, 0);
  requireNumber('blendSplit: sum of parts', whole, { above: 0 }, 'parts');
  return parts.map((part) => (litres * part) / whole);
}
