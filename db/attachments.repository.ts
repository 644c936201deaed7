import type { Database } from 'better-sqlite3';
import { prepared } from './statements.ts';

/** Which pictures and papers belong to which project. No undo: a file once attached stays with its project. */

export const ATTACHMENT_TYPES = ['image/jpeg', 'image/png', 'image/webp', 'application/pdf'] as const;

export interface Attachment {
  /** SHA-256 of the bytes, hexadecimal. */
  readonly id: string;
  /** As the file was called. */
  readonly name: string;
  readonly type: (typeof ATTACHMENT_TYPES)[number];
  readonly bytes: number;
  /** When it was kept, ISO 8601. */
  readonly at: string;
}

const sql = {
  ofProject: `SELECT id, name, type, bytes, at FROM attachment WHERE project_id = ? ORDER BY at, id`,
  one: `SELECT id, name, type, bytes, at FROM attachment WHERE project_id = ? AND id = ?`,
  put: `INSERT INTO attachment (project_id, id, name, type, bytes, at) VALUES (@projectId, @id, @name, @type, @bytes, @at)
ON CONFLICT (project_id, id) DO UPDATE SET name = excluded.name`,
  copy: `INSERT OR IGNORE INTO attachment (project_id, id, name, type, bytes, at)
SELECT @to, id, name, type, bytes, at FROM attachment WHERE project_id = @from`,
  adopt: `INSERT OR IGNORE INTO attachment (project_id, id, name, type, bytes, at)
SELECT @to, id, name, type, bytes, MAX(at) FROM attachment
WHERE id IN (SELECT attachment_id FROM payment WHERE project_id = @to) GROUP BY id`,
  ids: `SELECT DISTINCT id FROM attachment`,
  table: `SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'attachment'`,
};

export function readAttachments(db: Database, projectId: number): Attachment[] {
  return prepared(db, sql.ofProject).all(projectId) as Attachment[];
}

export function readAttachment(db: Database, projectId: number, id: string): Attachment | undefined {
  return prepared(db, sql.one).get(projectId, id) as Attachment | undefined;
}

/** Notes an attachment; one that the project has already takes the new name. */
export function saveAttachment(db: Database, projectId: number, attachment: Attachment): void {
  prepared(db, sql.put).run({ projectId, ...attachment });
}

/** Gives one project the attachments of another, for a copy of it. */
export function copyAttachments(db: Database, from: number, to: number): void {
  prepared(db, sql.copy).run({ from, to });
}

/**
 * Gives a project that came in as a document what its payments name, where another project here has it: a document names
 * its files by what they hold, and does not bring them.
 */
export function adoptAttachments(db: Database, to: number): void {
  prepared(db, sql.adopt).run({ to });
}

/** False for a database, such as an old backup, from before there were attachments. */
export function hasAttachments(db: Database): boolean {
  return prepared(db, sql.table).get() !== undefined;
}

/** The ids of the attachments of all projects. */
export function readAllAttachmentIds(db: Database): ReadonlySet<string> {
  return new Set((prepared(db, sql.ids).all() as { id: string }[]).map(({ id }) => id));
}
