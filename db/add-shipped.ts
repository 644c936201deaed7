import type { Database } from 'better-sqlite3';
import type { Catalogue } from '../server/planning/product.ts';
import {
  bumpCatalogueRevision,
  insertProduct,
  insertSupplier,
  readCatalogueRows,
} from './catalogue.repository.ts';

/**
 * Adds the shipped products and suppliers that the database does not have yet, by their ids. What is there, edited
 * by the user or not, stays as it is. A short name the user has given away already gets a number after it. Answers
 * the ids of the products added.
 */
export function addShipped(db: Database, shipped: Catalogue): string[] {
  return db
    .transaction(() => {
      const present = readCatalogueRows(db);
      const productIds = new Set(present.products.map((product) => product.id));
      const supplierIds = new Set(present.suppliers.map((supplier) => supplier.id));
      const shortNames = new Set(present.products.map((product) => product.shortName.toLowerCase()));
      const suppliers = shipped.suppliers.filter((supplier) => !supplierIds.has(supplier.id));
      const products = shipped.products.filter((product) => !productIds.has(product.id));

      for (const supplier of suppliers) insertSupplier(db, supplier);
      for (const product of products) {
        const shortName = unusedName(product.shortName, shortNames);
        shortNames.add(shortName.toLowerCase());
        insertProduct(db, { ...product, shortName, origin: 'shipped' });
      }
      if (suppliers.length + products.length > 0) bumpCatalogueRevision(db);
      return products.map((product) => product.id);
    })
    .immediate();
}

/** The name itself, or with the first number from 2 up that makes it one not in `taken` (lower case names). */
export function unusedName(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name.toLowerCase())) return name;
  let number = 2;
  while (taken.has(`${name} ${number}`.toLowerCase())) number++;
  return `${name} ${number}`;
}
