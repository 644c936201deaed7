import type { Migration } from '../migrate.ts';

/** From whom a quote comes, and what its sheet shows the customer. Frozen. */
export const quoteSheets: Migration = {
  name: '010-quote-sheets',
  up: (db) =>
    db.exec(`
ALTER TABLE quote ADD COLUMN sender TEXT NOT NULL DEFAULT '';
ALTER TABLE quote ADD COLUMN shown TEXT NOT NULL DEFAULT 'price';
`),
};
