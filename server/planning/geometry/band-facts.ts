import { evidenceText } from '../finish/evidence-text.ts';
import { isPositive } from '../finish/is-positive.ts';
import type { Product } from '../product.ts';
import { DEDUCTED_FROM_MM } from './constants.ts';
import { productThickness } from './product-thickness.ts';

/** What the geometry of a part needs to know of a banding product. */
export interface BandFacts {
  readonly product: Product;
  readonly thicknessMm: number | null;
  /** What comes off the finished size for one such band, mm: 0 when it is not deducted, null when that is not known. */
  readonly deductedMm: number | null;
  /** Where the deduction comes from, in words. */
  readonly source: string;
  readonly widthMm: number | null;
  readonly widthSource: string;
}

/**
 * How thick and wide is a band, and does its thickness come off the cut size?
 *
 * `product`: a banding product. `measuredMm`: its measured thickness, mm, if any. Result in mm. The product says
 * whether it is deducted; where it leaves that open, bands from 1 mm up are and thinner veneer is not (common
 * practice, no source). A band whose thickness is not known has no known deduction unless it is never deducted.
 *
 * Example: 2 mm plastic is deducted, 0.6 mm veneer is not.
 */
export function bandFacts(product: Product, measuredMm: number | null | undefined): BandFacts {
  const { mm, source } = productThickness(product, measuredMm);
  const choice = product.choices.deducted ?? 'auto';
  const deducted = choice === 'auto' ? mm !== null && mm >= DEDUCTED_FROM_MM : choice === 'yes';
  const deductedMm = choice === 'no' ? 0 : mm === null ? null : deducted ? mm : 0;
  const why =
    choice === 'auto'
      ? `${deducted ? 'deducted' : 'not deducted'}: bands from ${DEDUCTED_FROM_MM} mm up are (common practice, no source)`
      : `${deducted ? 'deducted' : 'not deducted'}: set for this product`;
  const width = product.figures.width;
  const known = width !== undefined && isPositive(width.typical);
  return {
    product,
    thicknessMm: mm,
    deductedMm,
    source: mm === null ? source : `${mm} mm, ${source}; ${why}`,
    widthMm: known ? width.typical : null,
    widthSource: known ? evidenceText(width) : 'not in the catalogue',
  };
}
