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
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { readAllAttachmentIds } from './attachments.repository.ts';

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
    writeSync(file, content);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(partial, path);
  return id;
}

/**
 * Removes the files that belong to no project any more. A file goes only with its project: as long as a project can be
 * undone or brought back, whatever was ever attached to it is there.
 */
export function forgetAttachmentFiles(db: Database): void {
  const folder = attachmentFolder(db.name);
  if (!existsSync(folder)) return;
  const named = readAllAttachmentIds(db);
  for (const file of readdirSync(folder)) if (!named.has(file)) rmSync(join(folder, file), { force: true });
}
