import type { PartPlan } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';
import type { Blank } from './blank.ts';

/** A sheet or board product with the blanks to cut from it. */
export interface MaterialBlanks {
  readonly product: Product;
  readonly blanks: readonly Blank[];
  /** Rows of this material whose cut size or quantity is not known: they are not in the plan. */
  readonly unknownRows: number;
}

/**
 * Which pieces must be cut from which sheet or board product.
 *
 * `input`: for material and grain. `parts`: cut sizes (mm) and quantities, one per part row.
 * Result: the materials in the order of the part list. Rows without a known sheet or board are left out: their
 * material cell has a problem of its own. A quantity of 0 needs no piece. No source: grouping only.
 */
export function materialBlanks(input: ProjectInput, parts: readonly PartPlan[]): MaterialBlanks[] {
  const products = new Map(input.catalogue.products.map((product) => [product.id, product]));
  const rows = new Map(input.parts.map((part) => [part.id, part]));
  const groups = new Map<string, { product: Product; blanks: Blank[]; unknownRows: number }>();
  for (const part of parts) {
    const row = rows.get(part.id);
    const product = row === undefined ? undefined : products.get(row.materialId);
    if (row === undefined || product === undefined) continue;
    if (product.kind !== 'sheet' && product.kind !== 'board') continue;
    let material = groups.get(product.id);
    if (material === undefined) {
      material = { product, blanks: [], unknownRows: 0 };
      groups.set(product.id, material);
    }
    const lengthMm = part.cutLengthMm.value;
    const widthMm = part.cutWidthMm.value;
    const count = part.quantity.value;
    if (count === 0) continue;
    if (lengthMm === null || widthMm === null || count === null || !(lengthMm > 0) || !(widthMm > 0)) {
      material.unknownRows++;
      continue;
    }
    const name = row.name.trim() === '' ? `part ${row.id}` : row.name.trim();
    material.blanks.push({ partId: part.id, name, lengthMm, widthMm, count, grain: row.grain });
  }
  return [...groups.values()];
}
