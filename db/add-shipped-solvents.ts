import type { Database } from 'better-sqlite3';
import type { Catalogue } from '../server/planning/product.ts';
import { bumpCatalogueRevision, readCatalogueRows, replaceProduct } from './catalogue.repository.ts';

/**
 * Tells shipped products of an older file which solvents they have: those of which nothing was ever said. What a user
 * entered, or emptied, keeps evidence of its own and stays.
 */
export function addShippedSolvents(db: Database, shipped: Catalogue): void {
  const known = new Map(shipped.products.map((product) => [product.id, product]));
  db.transaction(() => {
    const told = readCatalogueRows(db).products.flatMap((product) => {
      const { solvents, solventsEvidence } = known.get(product.id) ?? {};
      if (product.origin !== 'shipped' || product.solvents !== undefined || solvents === undefined) return [];
      return [{ ...product, solvents, solventsEvidence: solventsEvidence ?? null }];
    });
    for (const product of told) replaceProduct(db, product);
    if (told.length > 0) bumpCatalogueRevision(db);
  }).immediate();
}
