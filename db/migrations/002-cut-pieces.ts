import type { Migration } from '../migrate.ts';

/** Pieces ticked off a cutting plan. Frozen. */
export const cutPieces: Migration = {
  name: '002-cut-pieces',
  up: (db) =>
    db.exec(`
CREATE TABLE cut_piece (
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  layout TEXT NOT NULL,
  sheet INTEGER NOT NULL,
  piece INTEGER NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (project_id, layout, sheet, piece)
) STRICT, WITHOUT ROWID;
`),
};
