import type { Database } from 'better-sqlite3';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import type { NewProject } from '../../db/create-project.ts';
import { importProducts } from '../../db/import-products.ts';
import { sameProduct } from '../../db/same-product.ts';
import { readProjectDocument } from '../exchange/project-document.ts';
import type { Catalogue } from '../planning/product.ts';
import type { ProjectInput } from '../planning/project-input.ts';
import { DocumentFaults } from './document-faults.ts';
import { withProductIds } from './with-product-ids.ts';

let shipped: Catalogue | null = null;

/** The catalogue as the program is shipped, read once: what a document is written against and planned with. */
export function shippedCatalogue(): Catalogue {
  shipped ??= readCatalogue();
  return shipped;
}

/** The shipped catalogue, with the stored state of every product that says the same. */
export function shippedAsStored(stored: Catalogue): Catalogue {
  const { products, suppliers } = shippedCatalogue();
  const byId = new Map(stored.products.map((product) => [product.id, product]));
  return {
    suppliers,
    products: products.map((product) => {
      const here = byId.get(product.id);
      return here !== undefined && sameProduct(here, product) ? here : product;
    }),
  };
}

/** The project a document holds, completed from a catalogue. Throws DocumentFaults. */
export function inputOf(document: unknown, catalogue: Catalogue): ProjectInput {
  const read = readProjectDocument(document, catalogue);
  if (!read.ok) throw new DocumentFaults(read.problems);
  return read.input;
}

/**
 * The project a document holds, ready to be stored: products it brings along are in the catalogue afterwards, and
 * its rows name them by their ids there. The caller holds the transaction.
 */
export function importedProject(db: Database, document: unknown, catalogue: Catalogue): NewProject {
  const input = inputOf(document, catalogue);
  const known = new Set<object>([...catalogue.products, ...catalogue.suppliers]);
  const ids = importProducts(
    db,
    input.catalogue.products.filter((product) => !known.has(product)),
    input.catalogue.suppliers.filter((supplier) => !known.has(supplier)),
  );
  return ids.size === 0 ? input : withProductIds(input, ids);
}
