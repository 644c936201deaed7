import type { Migration } from '../../db/migrate.ts';
import { ALL_MIGRATIONS } from '../../db/migrations/all-migrations.ts';
import type { OpenOptions } from '../../db/open.ts';
import { SCHEMA_SQL } from '../../db/schema.ts';

/** A next step as it might be written one day: a column more. */
export const addsColumn: Migration = {
  name: '999-add-colour',
  up: (db) => db.exec(`ALTER TABLE blend ADD COLUMN colour TEXT NOT NULL DEFAULT 'none'`),
};
const schemaWithColumn = SCHEMA_SQL.replace(
  /(CREATE TABLE blend \([^;]*name TEXT NOT NULL)/,
  `$1,\n  colour TEXT NOT NULL DEFAULT 'none'`,
);
/** The options a program one step ahead of this one would open its files with. */
export const newerProgram: OpenOptions = {
  migrations: [...ALL_MIGRATIONS, addsColumn],
  schemaSql: schemaWithColumn,
};
