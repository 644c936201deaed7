import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import { DatabaseProblem } from './database-problem.ts';
import { type Migration, migrate } from './migrate.ts';
import { ALL_MIGRATIONS } from './migrations/all-migrations.ts';
import { APPLICATION_ID, SCHEMA_SQL } from './schema.ts';
import { schemaText } from './schema-text.repository.ts';

/** How long a statement waits for another connection's transaction (the restore command, a second program), ms. */
const BUSY_TIMEOUT_MS = 5000;

export interface OpenOptions {
  /** For tests of what is not there yet. */
  readonly migrations?: readonly Migration[];
  readonly schemaSql?: string;
  readonly now?: Date;
}

/**
 * Opens the database at `path`, creating it with the newest layout or migrating it when it is older. Throws
 * DatabaseProblem when the file cannot be used; it is then left as it was.
 */
export function openDatabase(path: string, options: OpenOptions = {}): Database {
  const { migrations = ALL_MIGRATIONS, schemaSql = SCHEMA_SQL, now = new Date() } = options;
  const db = openFile(path);
  try {
    db.pragma(`busy_timeout = ${BUSY_TIMEOUT_MS}`);
    db.pragma('foreign_keys = ON');
    const version = recognisedVersion(db, migrations.length);
    if (version === null) create(db, schemaSql, migrations.length);
    else {
      migrate(db, migrations, now, (migrated) => checkLayout(migrated, schemaSql));
      checkLayout(db, schemaSql);
    }
    db.pragma('journal_mode = WAL');
    // FULL, not NORMAL: an edit is on the disk before it is acknowledged. A killed process loses nothing either
    // way; with NORMAL a power cut could take back the last acknowledged edits. It costs one fsync per edit.
    db.pragma('synchronous = FULL');
    return db;
  } catch (error) {
    db.close();
    throw asProblem(error, path);
  }
}

function openFile(path: string): Database {
  try {
    mkdirSync(dirname(path), { recursive: true });
    return new Sqlite(path);
  } catch (error) {
    throw asProblem(error, path);
  }
}

/** The file's layout version, or null for a new, empty file. Throws for files of others and of newer programs. */
function recognisedVersion(db: Database, newest: number): number | null {
  const version = db.pragma('user_version', { simple: true }) as number;
  const application = db.pragma('application_id', { simple: true }) as number;
  if (version === 0 && application === 0 && schemaText(db) === '') return null;
  if (application !== APPLICATION_ID)
    throw new DatabaseProblem(
      `${db.name} is a database of another program.`,
      'Set PLYWRIGHT_DB to a file that does not exist yet, or to a Plywright file.',
    );
  if (version > newest)
    throw new DatabaseProblem(
      `${db.name} was written by a newer Plywright (layout ${version}; this one knows ${newest}).`,
      'Start the newer program, or set PLYWRIGHT_DB to another file. Nothing was changed.',
    );
  return version;
}

function create(db: Database, schemaSql: string, version: number): void {
  db.transaction(() => {
    db.exec(schemaSql);
    db.pragma(`application_id = ${APPLICATION_ID}`);
    db.pragma(`user_version = ${version}`);
  })();
}

/** Compares the layout with the one a fresh file gets; a table altered by hand must not go unnoticed. */
function checkLayout(db: Database, schemaSql: string): void {
  const fresh = new Sqlite(':memory:');
  fresh.exec(schemaSql);
  const expected = schemaText(fresh);
  fresh.close();
  if (schemaText(db) !== expected)
    throw new DatabaseProblem(
      `The tables in ${db.name} are not laid out as this program expects.`,
      'Restore a backup with `npm run restore`. Nothing was changed.',
    );
}

function asProblem(error: unknown, path: string): unknown {
  if (error instanceof DatabaseProblem) return error;
  const code = (error as { code?: string }).code ?? '';
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT'))
    return new DatabaseProblem(
      `${path} is damaged, or not a database.`,
      'Restore a backup with `npm run restore`, or move the file away to begin anew.',
      error,
    );
  if (code === 'SQLITE_BUSY')
    return new DatabaseProblem(
      `${path} is held by another program.`,
      'Close the other program and start again.',
      error,
    );
  if (
    /^(EACCES|EPERM|EROFS|ENOTDIR|EEXIST|ENOSPC)$/.test(code) ||
    /^SQLITE_(CANTOPEN|READONLY|FULL|IOERR)/.test(code)
  )
    return new DatabaseProblem(
      `${path} cannot be opened for writing (${code}).`,
      'Check the rights and the free space of its folder, or set PLYWRIGHT_DB to a file elsewhere.',
      error,
    );
  return error;
}
