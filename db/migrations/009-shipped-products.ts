import type { Migration } from '../migrate.ts';

/** What was shipped to this database, so that later corrections reach it. Frozen. */
export const shippedProducts: Migration = {
  name: '009-shipped-products',
  up: (db) =>
    db.exec(`
CREATE TABLE shipped_product (
  product_id TEXT NOT NULL PRIMARY KEY,
  content TEXT NOT NULL
) STRICT, WITHOUT ROWID;
`),
};
