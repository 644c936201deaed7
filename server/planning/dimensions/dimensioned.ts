import { type Refusal, refuse } from './refusal.ts';

/** A number inside a calculation. */
export interface Dimensioned {
  readonly ok: true;
  /** In mm to the power of `power`. */
  readonly value: number;
  /** 1 for a length, 0 for a plain number, 2 for an area on the way to something else. */
  readonly power: number;
  /** Made of numbers without a unit only, so that it may still become a length in the project's unit. */
  readonly bare: boolean;
}

/**
 * What are several numbers of a calculation in one dimension, so that they can be added or compared?
 *
 * `numbers`: each a length or a plain number. `unitMm`: mm in the project's unit. Result: the values in mm to the
 * common power; a number without a unit beside a length takes the project's unit. A refusal where a length meets a
 * ratio (a length divided by a length) or an area. A rule of ours.
 *
 * Example: 600 mm and a bare 2 in a project in inches are 600 mm and 50.8 mm.
 */
export function alike(
  numbers: readonly Dimensioned[],
  unitMm: number,
):
  | { readonly ok: true; readonly values: readonly number[]; readonly power: number; readonly bare: boolean }
  | Refusal {
  const power = numbers.every(({ bare }) => bare) ? 0 : (numbers.find(({ bare }) => !bare)?.power ?? 0);
  const values: number[] = [];
  for (const number of numbers) {
    if (number.power === power) values.push(number.value);
    else if (number.bare && power === 1) values.push(number.value * unitMm);
    else
      return refuse(
        'expression-invalid',
        `The calculation puts ${dimensionName(number.power)} together with ${dimensionName(power)}.`,
        'Add, subtract and compare lengths with lengths only.',
      );
  }
  return { ok: true, values, power, bare: numbers.every(({ bare }) => bare) };
}

/**
 * What is a number of this power of a length called? No units, no source.
 *
 * Example: power 2 is "an area".
 */
export function dimensionName(power: number): string {
  if (power === 0) return 'a plain number';
  if (power === 1) return 'a length';
  return power === 2 ? 'an area' : 'something that is neither a length nor a number';
}
