import { requireNumber } from './require-number.ts';

/**
 * How do the litres of a two-part product fall on base and hardener?
 *
 * @param litres mixed liquid without thinner, L, 0 or more
 * @param mixBase volumes of base, above 0
 * @param mixHardener volumes of hardener, above 0
 * @returns litres of each; they add up to the mix
 *
 * Source: definition of a mixing ratio by volume. Valid for ratios by volume only, not by weight.
 * Departures: none.
 * Example: 1.2 L at 2 : 1 is 0.8 L base and 0.4 L hardener.
 */
export function twoPartSplit({
  litres,
  mixBase,
  mixHardener,
}: {
  readonly litres: number;
  readonly mixBase: number;
  readonly mixHardener: number;
}): { readonly baseL: number; readonly hardenerL: number } {
  requireNumber('twoPartSplit: litres', litres, { atLeast: 0 }, 'L');
  requireNumber('twoPartSplit: mixBase', mixBase, { above: 0 }, 'volumes');
  requireNumber('twoPartSplit: mixHardener', mixHardener, { above: 0 }, 'volumes');
  const whole = mixBase + mixHardener;
  return { baseL: (litres * mixBase) / whole, hardenerL: (litres * mixHardener) / whole };
}
