import { type Figure, figure } from '../figure.ts';

/**
 * What remains of one sum of money after another?
 *
 * @param below said of a result below 0
 * @returns whole minor units; unknown when one of the two is
 *
 * Source: definition. Example: a budget of 500.00 less a forecast of 520.00 leaves -20.00.
 */
export function difference(
  rule: string,
  [name, from]: readonly [string, Figure],
  [lessName, less]: readonly [string, Figure],
  below: string,
): Figure {
  const value = from.value === null || less.value === null ? null : from.value - less.value;
  return figure(value, 'minor', {
    rule,
    inputs: [
      { name, value: from.value, unit: 'minor' },
      { name: lessName, value: less.value, unit: 'minor' },
    ],
    ...(value !== null && value < 0
      ? { notes: [below] }
      : value === null
        ? { notes: [`Not known, since ${from.value === null ? name : lessName} is not.`] }
        : {}),
  });
}
