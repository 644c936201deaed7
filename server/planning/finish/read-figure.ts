import type { Product, ProductFigureName } from '../product.ts';
import { evidenceText } from './evidence-text.ts';
import { isPositive } from './is-positive.ts';

/** A catalogue number as a working shows it: null when unknown, with what there is to say about it. */
export interface Reading {
  readonly value: number | null;
  readonly source: string;
  readonly notes: readonly string[];
}

/**
 * What does the catalogue say about one figure of a product?
 *
 * @param product the product
 * @param name figure name; the result is in the unit fixed for it in PRODUCT_FIGURES
 * @returns its typical value with the evidence in words; null when it is missing or not a positive number
 *
 * Source: the figure's own evidence, printed. Departure: none; a figure is never replaced by 0.
 * Example: the typical pot life of a two-part varnish, 120 min, "label value, typical of the family".
 */
export function readFigure(product: Product, name: ProductFigureName): Reading {
  const found = product.figures[name];
  if (found === undefined || !isPositive(found.typical))
    return { value: null, source: 'not in the catalogue', notes: [] };
  return { value: found.typical, source: evidenceText(found), notes: [] };
}
