import type { Migration } from '../migrate.ts';

/** A limit on cut stages, grain matches, and the layouts of sheets that are being cut. Frozen. */
export const cuttingWishes: Migration = {
  name: '006-cutting-wishes',
  up: (db) =>
    db.exec(`
ALTER TABLE project ADD COLUMN cut_stages INTEGER CHECK (cut_stages IN (2, 3));
ALTER TABLE part ADD COLUMN grain_match TEXT NOT NULL DEFAULT '';
CREATE TABLE begun_layout (
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  layout TEXT NOT NULL,
  material_id TEXT NOT NULL,
  content TEXT NOT NULL,
  PRIMARY KEY (project_id, layout)
) STRICT, WITHOUT ROWID;
`),
};
