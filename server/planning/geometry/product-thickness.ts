import { evidenceText } from '../finish/evidence-text.ts';
import { isPositive } from '../finish/is-positive.ts';
import type { Product } from '../product.ts';

export interface Thickness {
  /** Mm; null when not known. */
  readonly mm: number | null;
  readonly source: string;
}

/**
 * How thick is a product in this project?
 *
 * `product`: sheet, board or banding. `measuredMm`: what the user measured, mm, if so; null when what was entered is
 * no thickness. Result: mm with where it comes from: the measurement, else the catalogue's measured thickness, else
 * (sheets and boards) the nominal one, else null. A rule of ours: what was measured on the piece in hand wins.
 *
 * Example: birch sold as 18 mm with a typical 17.6 mm is 17.6 mm until the user measures 17.4.
 */
export function productThickness(product: Product, measuredMm: number | null | undefined): Thickness {
  if (measuredMm === null) return { mm: null, source: 'the measured thickness cannot be used' };
  if (measuredMm !== undefined) return { mm: measuredMm, source: 'measured by you for this project' };
  const names =
    product.kind === 'banding'
      ? (['thicknessActual'] as const)
      : (['thicknessActual', 'thicknessNominal'] as const);
  for (const name of names) {
    const found = product.figures[name];
    if (found !== undefined && isPositive(found.typical))
      return {
        mm: found.typical,
        source: `${name === 'thicknessNominal' ? 'nominal thickness, ' : ''}${evidenceText(found)}`,
      };
  }
  return { mm: null, source: 'not in the catalogue' };
}
