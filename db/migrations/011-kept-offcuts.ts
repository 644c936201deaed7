import type { Migration } from '../migrate.ts';

/** From which sheet an offcut on hand was cut. Frozen. */
export const keptOffcuts: Migration = {
  name: '011-kept-offcuts',
  up: (db) => db.exec(`ALTER TABLE on_hand ADD COLUMN kept_from TEXT NOT NULL DEFAULT '';`),
};
