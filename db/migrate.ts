import { existsSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { DatabaseProblem } from './database-problem.ts';
import { fileStamp } from './file-stamp.ts';

export interface Migration {
  /** Number and words, as its file is called: "002-add-colour". */
  readonly name: string;
  readonly up: (db: Database) => void;
}

/**
 * Leads an older file to the newest layout. A copy is laid next to the file first; then all steps, `check` and the
 * new version number share one transaction, so that whatever fails leaves the file as it was. Answers the path of
 * the copy, or null when there was nothing to do.
 */
export function migrate(
  db: Database,
  migrations: readonly Migration[],
  now: Date,
  check: (db: Database) => void,
): string | null {
  const version = db.pragma('user_version', { simple: true }) as number;
  if (version >= migrations.length) return null;
  const copy = `${db.name}.version-${version}.${fileStamp(now)}.bak`;
  if (!existsSync(copy)) db.exec(`VACUUM INTO '${copy.replaceAll("'", "''")}'`);

  let running = '';
  try {
    db.transaction(() => {
      db.pragma('defer_foreign_keys = ON');
      for (const migration of migrations.slice(version)) {
        running = migration.name;
        migration.up(db);
      }
      const orphans = db.pragma('foreign_key_check') as unknown[];
      if (orphans.length > 0) throw new Error(`${orphans.length} rows point at rows that do not exist`);
      check(db);
      db.pragma(`user_version = ${migrations.length}`);
    })();
  } catch (cause) {
    throw new DatabaseProblem(
      `Bringing ${db.name} up to date failed at step ${running}: ${(cause as Error).message}.`,
      `The file is as it was, and a copy lies in ${copy}. Go on with the earlier program until the cause is found.`,
      cause,
    );
  }
  return copy;
}
