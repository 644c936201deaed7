import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { fileStamp } from './file-stamp.ts';

/** How many backups of each occasion are kept; older ones are deleted. */
export const BACKUPS_KEPT = 7;

/** When a backup is made: at start and once a day, before a project is deleted, before a backup is put back. */
export type Occasion = 'daily' | 'before-delete' | 'before-restore';

/** The folder of a database's backups, beside the file. */
export function backupFolder(databasePath: string): string {
  return join(dirname(databasePath), 'backups');
}

/**
 * Writes a backup of the whole database and lets go of the oldest ones of its occasion. Answers its path; when
 * nothing has changed since the last backup, that one's path, so that starting often does not push older states out.
 */
export function backUp(db: Database, occasion: Occasion, now: Date): string {
  const folder = backupFolder(db.name);
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${basename(db.name, '.db')}.${fileStamp(now)}.${occasion}.db`);
  const partial = `${path}.partial`;
  rmSync(partial, { force: true });
  db.exec(`VACUUM INTO '${partial.replaceAll("'", "''")}'`);

  const [last] = listBackups(db.name);
  if (last !== undefined && readFileSync(last).equals(readFileSync(partial))) {
    rmSync(partial);
    return last;
  }
  renameSync(partial, path);
  const ofOccasion = listBackups(db.name).filter((file) => file.endsWith(`.${occasion}.db`));
  for (const old of ofOccasion.slice(BACKUPS_KEPT)) rmSync(old);
  return path;
}

/** Paths of a database's backups, newest first. */
export function listBackups(databasePath: string): string[] {
  const folder = backupFolder(databasePath);
  if (!existsSync(folder)) return [];
  const name = `${basename(databasePath, '.db')}.`;
  return readdirSync(folder)
    .filter((file) => file.startsWith(name) && /^\d{8}T\d{9}Z\.[a-z-]+\.db$/.test(file.slice(name.length)))
    .toSorted()
    .reverse()
    .map((file) => join(folder, file));
}
