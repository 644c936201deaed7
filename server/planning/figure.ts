/**
 * A figure is one computed number together with its working: the rule in words, what went in, and where each
 * input came from. `value: null` means unknown, never zero; the working's notes then say what is missing.
 */

/** Canonical units: one per quantity. `minor` is the currency's minor unit (whole numbers). */
export type FigureUnit =
  | 'mm'
  | 'm'
  | 'm2'
  | 'L'
  | 'g'
  | 'min'
  | 'm2/L'
  | 'g/L'
  | 'percent'
  | 'ratio'
  | 'pcs'
  | 'C'
  | 'um'
  | 'm3'
  | 'm3/h'
  | 'W'
  | 'kWh'
  | 'minor';

export interface WorkingInput {
  /** What the input is, in trade words: "finished length". */
  readonly name: string;
  readonly value: number | string | null;
  /** Empty for text inputs and plain counts. */
  readonly unit: FigureUnit | '';
  /** Path of the figure this input is, e.g. `parts/12/cutLengthMm`, so that the reader can go on opening. */
  readonly from?: string;
  /** Where a catalogue figure or a rule of thumb comes from, as printed to the reader. */
  readonly source?: string;
}

export interface Working {
  /** The rule in words and symbols: "cut length = finished length - deducted bands on left and right". */
  readonly rule: string;
  readonly inputs: readonly WorkingInput[];
  /** Assumptions, rounding and unknowns the reader should know of. */
  readonly notes?: readonly string[];
}

export interface Figure {
  readonly value: number | null;
  readonly unit: FigureUnit;
  readonly working: Working;
}

/** The same shape with every figure reduced to its bare number: what travels to the screen. */
export type Values<T> = T extends Figure
  ? number | null
  : T extends string | number | boolean | null
    ? T
    : T extends object
      ? { readonly [Key in keyof T]: Values<T[Key]> }
      : T;

/** Makes a figure; `-0` becomes `0`, and a value that is not finite is a programming error. Throws RangeError. */
export function figure(value: number | null, unit: FigureUnit, working: Working): Figure {
  if (value !== null && !Number.isFinite(value))
    throw new RangeError(`figure: value must be finite or null, got ${value}`);
  return { value: value === 0 ? 0 : value, unit, working };
}
