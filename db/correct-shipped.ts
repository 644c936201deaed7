import type { Database } from 'better-sqlite3';
import type { Catalogue } from '../server/planning/product.ts';
import { canonicalJson } from './canonical-json.ts';
import { bumpCatalogueRevision, readCatalogueRows, replaceProduct } from './catalogue.repository.ts';
import { mergeShipped } from './merge-shipped.ts';
import { readShippedProducts, saveShippedProduct } from './shipped-products.repository.ts';

/**
 * Brings corrections of the shipped catalogue into a database that has its products already, and answers the ids of the
 * products that changed. What a user has changed stays. A database that does not know yet what was shipped to it takes
 * what is there for the user's own, and learns from now on.
 */
export function correctShipped(db: Database, shipped: Catalogue): string[] {
  return db
    .transaction(() => {
      const before = readShippedProducts(db);
      const mine = new Map(readCatalogueRows(db).products.map((product) => [product.id, product]));
      const corrected: string[] = [];
      for (const now of shipped.products) {
        const last = before.get(now.id);
        if (last !== undefined && canonicalJson(last) === canonicalJson(now)) continue;
        saveShippedProduct(db, now);
        const held = mine.get(now.id);
        if (last === undefined || held?.origin !== 'shipped') continue;
        const merged = mergeShipped(last, held, now);
        if (canonicalJson(merged) === canonicalJson(held)) continue;
        replaceProduct(db, merged);
        corrected.push(now.id);
      }
      if (corrected.length > 0) bumpCatalogueRevision(db);
      return corrected;
    })
    .immediate();
}
