import type { Database } from 'better-sqlite3';
import type { Product } from '../server/planning/product.ts';
import { prepared } from './statements.ts';

/** Each shipped product as it was shipped when this database last saw it: what tells the user's values from ours. */

const sql = {
  all: `SELECT product_id AS id, content FROM shipped_product`,
  save: `INSERT INTO shipped_product (product_id, content) VALUES (?, ?)
ON CONFLICT (product_id) DO UPDATE SET content = excluded.content`,
};

export function readShippedProducts(db: Database): Map<string, Product> {
  const rows = prepared(db, sql.all).all() as { id: string; content: string }[];
  return new Map(rows.map(({ id, content }) => [id, JSON.parse(content) as Product]));
}

export function saveShippedProduct(db: Database, product: Product): void {
  prepared(db, sql.save).run(product.id, JSON.stringify(product));
}
