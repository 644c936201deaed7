import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import { hasAttachments, readAllAttachmentIds } from './attachments.repository.ts';
import { listBackups } from './backup.ts';

/** The folder of the pictures and papers kept with a database, beside the file and of its name. */
export function attachmentFolder(databasePath: string): string {
  return join(dirname(databasePath), `${basename(databasePath, '.db')}-attachments`);
}

/** Where the attachment of this id lies; it need not be there. */
export function attachmentPath(databasePath: string, id: string): string {
  if (!/^[0-9a-f]{64}$/.test(id)) throw new RangeError(`attachmentPath: no SHA-256 in hexadecimal: ${id}`);
  return join(attachmentFolder(databasePath), id);
}

/**
 * Writes an attachment beside the database and answers its id, the SHA-256 of what it holds: the same picture twice is
 * one file. The file is whole when it appears under its name, also if the program is killed meanwhile.
 */
export function keepAttachmentFile(databasePath: string, content: Uint8Array): string {
  const id = createHash('sha256').update(content).digest('hex');
  const path = attachmentPath(databasePath, id);
  if (existsSync(path)) return id;
  mkdirSync(dirname(path), { recursive: true });
  const partial = `${path}.partial`;
  const file = openSync(partial, 'w', 0o600);
  try {
    writeFileSync(file, content);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(partial, path);
  return id;
}

/**
 * Removes the files that belong to no project any more. A file goes only with its project: as long as a project can be
 * undone or brought back, whatever was ever attached to it is there; and as long as a backup names it, so that what the
 * backup brings back is whole.
 */
export function forgetAttachmentFiles(db: Database): void {
  const folder = attachmentFolder(db.name);
  if (!existsSync(folder)) return;
  const named = readAllAttachmentIds(db);
  const unnamed = readdirSync(folder).filter((file) => !named.has(file));
  if (unnamed.length === 0) return;
  const inBackups = attachmentsOfBackups(db.name);
  if (inBackups === null) return;
  for (const file of unnamed) if (!inBackups.has(file)) rmSync(join(folder, file), { force: true });
}

/** What the backups name; null when one of them cannot be asked, so that nothing is taken for forgotten. */
function attachmentsOfBackups(databasePath: string): ReadonlySet<string> | null {
  const ids = new Set<string>();
  for (const path of listBackups(databasePath)) {
    let backup: Database | undefined;
    try {
      backup = new Sqlite(path, { readonly: true });
      for (const id of hasAttachments(backup) ? readAllAttachmentIds(backup) : []) ids.add(id);
    } catch {
      return null;
    } finally {
      backup?.close();
    }
  }
  return ids;
}
