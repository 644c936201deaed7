import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import { backUp } from './backup.ts';
import { DatabaseProblem } from './database-problem.ts';
import { fileStamp } from './file-stamp.ts';
import { ALL_MIGRATIONS } from './migrations/all-migrations.ts';
import { APPLICATION_ID } from './schema.ts';

/**
 * Puts the backup in `from` in the place of the database at `to`, after a backup of what was there. Answers the
 * path of that backup, or null when there was no database. Throws DatabaseProblem when `from` is no sound backup or
 * when a program has the database open; nothing is changed then.
 */
export function restoreBackup(from: string, to: string, now: Date): string | null {
  checkBackup(from);
  mkdirSync(dirname(to), { recursive: true });
  const partial = `${to}.partial`;
  try {
    copyFileSync(from, partial);
    const saved = existsSync(to) ? setAside(to, now) : null;
    for (const companion of ['-wal', '-shm']) rmSync(`${to}${companion}`, { force: true });
    renameSync(partial, to);
    return saved;
  } finally {
    rmSync(partial, { force: true });
  }
}

function checkBackup(path: string): void {
  const refuse = (reason: string, cause?: unknown): never => {
    throw new DatabaseProblem(
      `${path} cannot be put back: ${reason}.`,
      'Choose another backup. Nothing was changed.',
      cause,
    );
  };
  if (!existsSync(path)) refuse('there is no such file');
  let db: Database | undefined;
  try {
    db = new Sqlite(path, { readonly: true });
    if (db.pragma('application_id', { simple: true }) !== APPLICATION_ID)
      refuse('it is not a Plywright database');
    if ((db.pragma('user_version', { simple: true }) as number) > ALL_MIGRATIONS.length)
      refuse('it was written by a newer Plywright');
    if (db.pragma('integrity_check', { simple: true }) !== 'ok') refuse('it is damaged');
  } catch (error) {
    if (error instanceof DatabaseProblem) throw error;
    refuse('it is damaged, or not a database', error);
  } finally {
    db?.close();
  }
}

/** Backs up the database that is about to be replaced; one that cannot be read is moved out of the way instead. */
function setAside(path: string, now: Date): string {
  let db: Database | undefined;
  try {
    db = new Sqlite(path, { timeout: 0 });
    // Leaving write-ahead mode needs the file for oneself alone: it fails while a program has it open.
    db.pragma('journal_mode = DELETE');
    return backUp(db, 'before-restore', now);
  } catch (error) {
    if (String((error as { code?: string }).code).startsWith('SQLITE_BUSY'))
      throw new DatabaseProblem(
        `${path} is open in another program.`,
        'Stop Plywright, then restore. Nothing was changed.',
        error,
      );
    const damaged = `${path}.${fileStamp(now)}.damaged`;
    renameSync(path, damaged);
    return damaged;
  } finally {
    db?.close();
  }
}
