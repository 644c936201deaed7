import type { Migration } from '../migrate.ts';

/** Deleted projects that can still be brought back. Frozen. */
export const deletedProjects: Migration = {
  name: '007-deleted-projects',
  up: (db) =>
    db.exec(`
CREATE TABLE deleted_project (
  project_id INTEGER NOT NULL PRIMARY KEY REFERENCES project (id) ON DELETE CASCADE,
  deleted_at TEXT NOT NULL
) STRICT;
`),
};
