import type { WorkingInput } from '../figure.ts';
import type { Product } from '../product.ts';
import type { CoverageEnds } from './coverage-ends.ts';
import type { Reading } from './read-figure.ts';

/** What a coat step lays on: one product, a two-part mix or a blend, brought to one shape. */
export interface Liquid {
  readonly name: string;
  /** Per litre of mixed liquid without thinner. */
  readonly coverage: CoverageEnds;
  readonly firstCoatFactor: Reading & { readonly value: number };
  /** How a litre of it falls on products; each product once. */
  readonly ingredients: readonly Ingredient[];
  readonly twoPart: boolean;
  /** Minutes; the shortest of the two-part components. */
  readonly potLife: Reading;
  /** True when it is thinned with water from the tap. */
  readonly waterborne: boolean;
  /** Known for single products whose solids and dry film are in the catalogue. */
  readonly film: { readonly solidsPercent: number; readonly dryFilmUm: number } | null;
}

export interface Ingredient {
  readonly product: Product;
  /** Share of the liquid by volume, 0 to 1; null while the mixing ratio is unknown. */
  readonly share: number | null;
  /** The parts and ratios the share comes from. */
  readonly inputs: readonly WorkingInput[];
}
