import type { Catalogue } from '../../product.ts';

/**
 * What can be bought today: the catalogue without the packs of suppliers one no longer orders from.
 *
 * @returns the catalogue itself where no supplier is retired. A product that only retired suppliers have keeps its packs, so that
 *   its sheets can still be cut up and its cost be seen; the buy list says that nobody has it.
 *
 * Source: definition. Valid range: any. Departures: none.
 */
export function offeredCatalogue(catalogue: Catalogue): Catalogue {
  const retired = new Set(catalogue.suppliers.filter((one) => one.retired).map(({ id }) => id));
  if (retired.size === 0) return catalogue;
  return {
    ...catalogue,
    products: catalogue.products.map((product) => {
      const offered = product.packs.filter(({ supplierId }) => !retired.has(supplierId ?? ''));
      const same = offered.length === 0 || offered.length === product.packs.length;
      return same ? product : { ...product, packs: offered };
    }),
  };
}
