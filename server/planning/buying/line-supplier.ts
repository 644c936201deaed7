import type { Catalogue } from '../product.ts';
import type { CountedPack } from './priced-packs.ts';

export interface LineSupplier {
  readonly supplierId: string | null;
  readonly supplierName: string;
  readonly notes: readonly string[];
}

/**
 * From whom is a line ordered?
 *
 * @returns the one supplier of its packs; null when none is named, or when the packs come from several, and then the
 *   name lists them and a note says which pack comes from whom
 *
 * Source: definition, the catalogue's offers.
 */
export function lineSupplier(chosen: readonly CountedPack[], catalogue: Catalogue): LineSupplier {
  const nameOf = (id: string | null): string =>
    id === null
      ? 'no supplier named'
      : (catalogue.suppliers.find((supplier) => supplier.id === id)?.name ?? id);
  const ids = [...new Set(chosen.map(({ pack }) => pack.supplierId))];
  const [only = null] = ids;
  if (ids.length <= 1)
    return { supplierId: only, supplierName: only === null ? '' : nameOf(only), notes: [] };
  return {
    supplierId: null,
    supplierName: ids.map(nameOf).join(', '),
    notes: chosen.map(({ pack, count }) => `${count} x ${pack.label} from ${nameOf(pack.supplierId)}.`),
  };
}
