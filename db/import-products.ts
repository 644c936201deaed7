import type { Database } from 'better-sqlite3';
import type { Product, Supplier } from '../server/planning/product.ts';
import { unusedName } from './add-shipped.ts';
import {
  bumpCatalogueRevision,
  insertProduct,
  insertSupplier,
  readCatalogueRows,
} from './catalogue.repository.ts';
import { sameProduct } from './same-product.ts';

/**
 * Brings the products and suppliers of a project document into the catalogue without touching what is there. A
 * product whose id is taken by one that says something else comes in beside it, under the next free id; one that is
 * there already, under whatever id, is used. Suppliers that are there stay as they are. Answers, for each product
 * that goes by another id here, the document's id and the one here. The caller holds the transaction.
 */
export function importProducts(
  db: Database,
  products: readonly Product[],
  suppliers: readonly Supplier[],
): ReadonlyMap<string, string> {
  const catalogue = readCatalogueRows(db);
  const present = new Map(catalogue.products.map((product) => [product.id, product]));
  const shortNames = new Set(catalogue.products.map((product) => product.shortName.toLowerCase()));
  const supplierIds = new Set(catalogue.suppliers.map((supplier) => supplier.id));
  const ids = new Map<string, string>();
  const coming: Product[] = [];
  for (const product of products) {
    const { id } = product;
    const twin = [present.get(id), ...present.values()].find(
      (other) => other !== undefined && sameProduct(other, product),
    );
    if (twin !== undefined) ids.set(id, twin.id);
    else {
      let free = id;
      for (let number = 2; present.has(free); number++) free = `${id}-${number}`;
      const shortName = unusedName(product.shortName, shortNames);
      shortNames.add(shortName.toLowerCase());
      present.set(free, product);
      ids.set(id, free);
      coming.push({ ...product, id: free, shortName, origin: 'user' });
    }
  }
  const newSuppliers = suppliers.filter((supplier) => !supplierIds.has(supplier.id));
  for (const supplier of newSuppliers) insertSupplier(db, supplier);
  for (const product of coming) {
    const { hardenerId } = product.choices;
    insertProduct(
      db,
      hardenerId === undefined
        ? product
        : { ...product, choices: { ...product.choices, hardenerId: ids.get(hardenerId) ?? hardenerId } },
    );
  }
  if (newSuppliers.length + coming.length > 0) bumpCatalogueRevision(db);
  return new Map([...ids].filter(([from, to]) => from !== to));
}
