import type { Catalogue } from '../../server/planning/product.ts';

export interface CatalogueFault {
  readonly table: 'products' | 'suppliers';
  /** Id of the product or supplier at fault. */
  readonly id: string;
  /** Field of the row, nested ones joined by dots. */
  readonly field: string;
  /** One sentence with the offending value. */
  readonly message: string;
}

/**
 * What is wrong between the rows of a catalogue: names used twice, suppliers, hardeners and solvents that are not there. Each row
 * is taken to be well formed in itself. Short names count as equal when they differ in capitals only, as they are
 * typed into cells.
 */
export function catalogueFaults({ products, suppliers, solvents }: Catalogue): CatalogueFault[] {
  const faults: CatalogueFault[] = [];
  const supplierIds = new Set(suppliers.map(({ id }) => id));
  const solventIds = solvents === undefined ? null : new Set(solvents.map((solvent) => solvent.id));
  const byId = new Map(products.map((product) => [product.id, product]));

  for (const [id, count] of counted(suppliers.map((supplier) => supplier.id)))
    if (count > 1) faults.push(twice('suppliers', id, 'id', 'supplier', id));
  for (const [id, count] of counted(products.map((product) => product.id)))
    if (count > 1) faults.push(twice('products', id, 'id', 'product', id));

  const shortNames = new Map<string, string>();
  for (const { id, shortName } of products) {
    const typed = shortName.toLowerCase();
    const owner = shortNames.get(typed);
    if (owner !== undefined && owner !== id)
      faults.push({
        table: 'products',
        id,
        field: 'shortName',
        message: `Product "${id}" has the short name "${shortName}", which "${owner}" has already.`,
      });
    else shortNames.set(typed, id);
  }

  for (const { id, packs, choices, solvents: of } of products) {
    packs.forEach(({ supplierId }, index) => {
      if (supplierId !== null && !supplierIds.has(supplierId))
        faults.push({
          table: 'products',
          id,
          field: `packs.${index}.supplierId`,
          message: `Product "${id}" is sold by "${supplierId}", which is not among the suppliers.`,
        });
    });
    const strange = (of ?? []).findIndex(({ solventId }) => solventIds?.has(solventId) === false);
    if (strange >= 0)
      faults.push({
        table: 'products',
        id,
        field: `solvents.${strange}.solventId`,
        message: `Product "${id}" names the solvent "${of?.[strange]?.solventId}", which is not in the list of solvents.`,
      });
    const { hardenerId } = choices;
    if (hardenerId !== undefined && byId.get(hardenerId)?.choices.role !== 'hardener')
      faults.push({
        table: 'products',
        id,
        field: 'choices.hardenerId',
        message: `Product "${id}" is mixed with "${hardenerId}", which is not a hardener in the catalogue.`,
      });
  }
  return faults;
}

function counted(ids: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const id of ids) counts.set(id, (counts.get(id) ?? 0) + 1);
  return counts;
}

function twice(
  table: CatalogueFault['table'],
  id: string,
  field: string,
  what: string,
  value: string,
): CatalogueFault {
  return { table, id, field, message: `The ${what} id "${value}" is used more than once.` };
}
