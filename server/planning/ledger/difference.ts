import { type Figure, figure } from '../figure.ts';

/** What a figure is called in a working, the figure, and its path. */
export type Term = readonly [name: string, figure: Figure, from: string];

/**
 * What remains of one sum of money after another?
 *
 * @param terms what each is called, the figure, and the path at which it can be opened
 * @param below said of a result below 0
 * @returns whole minor units; unknown when one of the two is
 *
 * Source: definition. Example: a budget of 500.00 less a forecast of 520.00 leaves -20.00.
 */
export function difference(
  rule: string,
  [name, whole, path]: Term,
  [lessName, less, lessPath]: Term,
  below: string,
): Figure {
  const value = whole.value === null || less.value === null ? null : whole.value - less.value;
  return figure(value, 'minor', {
    rule,
    inputs: [
      { name, value: whole.value, unit: 'minor', from: path },
      { name: lessName, value: less.value, unit: 'minor', from: lessPath },
    ],
    ...(value !== null && value < 0
      ? { notes: [below] }
      : value === null
        ? { notes: [`Not known, since ${whole.value === null ? name : lessName} is not.`] }
        : {}),
  });
}
