import {
  PRODUCT_FIGURES,
  type Product,
  type ProductChoices,
  type ProductFigureName,
  type ProductKind,
  type ProductUnit,
} from '../../server/planning/product.ts';

/** The units each kind may be counted in. */
export const UNITS_OF_KIND: Readonly<Record<ProductKind, readonly ProductUnit[]>> = {
  sheet: ['pcs'],
  board: ['m'],
  banding: ['m'],
  finish: ['L'],
  thinner: ['L'],
  abrasive: ['pcs'],
  glue: ['L', 'g', 'pcs'],
  filler: ['g', 'L', 'pcs'],
  hardware: ['pcs', 'm'],
  consumable: ['pcs', 'm', 'L', 'g'],
};

/** The kinds each choice makes sense for. */
const KINDS_OF_CHOICE: Readonly<Record<keyof ProductChoices, readonly ProductKind[]>> = {
  species: ['sheet', 'board', 'banding'],
  deducted: ['banding'],
  bandMaterial: ['banding'],
  role: ['finish'],
  carrier: ['finish'],
  colour: ['sheet', 'banding', 'finish', 'filler'],
  hardenerId: ['finish'],
  mixBase: ['finish'],
  mixHardener: ['finish'],
  grit: ['abrasive'],
  nominal: ['board'],
  rags: ['finish', 'thinner'],
};

export interface ProductFault {
  readonly path: readonly (string | number)[];
  readonly message: string;
}

/** What is wrong with a product whose fields are each well formed. Empty when nothing is. */
export function productFaults(product: Product): ProductFault[] {
  const { kind, unit, packs } = product;
  const faults: ProductFault[] = [];
  const fault = (path: ProductFault['path'], message: string): void => void faults.push({ path, message });
  if (!UNITS_OF_KIND[kind].includes(unit))
    fault(['unit'], `must be ${UNITS_OF_KIND[kind].join(' or ')} for the kind ${kind}`);
  for (const figure of Object.keys(product.figures) as ProductFigureName[])
    if (!(PRODUCT_FIGURES[figure].kinds as readonly ProductKind[]).includes(kind))
      fault(['figures', figure], `is not a figure of the kind ${kind}`);
  for (const choice of Object.keys(product.choices) as (keyof ProductChoices)[])
    if (!KINDS_OF_CHOICE[choice].includes(kind))
      fault(['choices', choice], `is not a choice of the kind ${kind}`);
  if (product.choices.hardenerId === product.id)
    fault(['choices', 'hardenerId'], 'must be another product than the one it hardens');
  if (product.recoat.length > 0 && kind !== 'finish') fault(['recoat'], `is not for the kind ${kind}`);
  if (product.recoat.length > 0 && product.recoatEvidence === null)
    fault(['recoatEvidence'], 'must say where the recoat intervals come from');
  const solvents = product.solvents ?? [];
  if (solvents.length > 0 && kind !== 'finish' && kind !== 'thinner')
    fault(['solvents'], `is not for the kind ${kind}`);
  if (solvents.length > 0 && (product.solventsEvidence ?? null) === null)
    fault(['solventsEvidence'], 'must say where the solvents come from');
  solvents.forEach(({ solventId }, index) => {
    if (solvents.findIndex((other) => other.solventId === solventId) < index)
      fault(['solvents', index, 'solventId'], 'is named by an earlier line of this product');
  });
  packs.forEach((pack, index) => {
    if (packs.findIndex(({ id }) => id === pack.id) < index)
      fault(['packs', index, 'id'], 'is used by an earlier pack of this product');
    const sized = pack.lengthMm !== null || pack.widthMm !== null;
    if (sized && kind !== 'sheet') fault(['packs', index, 'lengthMm'], 'is for sheets only');
    if (kind === 'sheet' && pack.amount !== 1) fault(['packs', index, 'amount'], 'must be 1 for a sheet');
  });
  return faults;
}
