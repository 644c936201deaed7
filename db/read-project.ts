import type { Database } from 'better-sqlite3';
import { noSuchProject } from './current-revision.ts';
import type { StoredProject } from './project-rows.ts';
import { readRevision, readSettings } from './projects.repository.ts';
import { readRows } from './rows.repository.ts';

/** One project with all its rows, as of one moment. Throws Refusal when there is no such project. */
export function readProject(db: Database, projectId: number): StoredProject {
  return db.transaction(() => {
    const revision = readRevision(db, projectId);
    const settings = readSettings(db, projectId);
    if (revision === undefined || settings === undefined) throw noSuchProject(projectId);
    return { id: String(projectId), revision, settings, rows: readRows(db, projectId) };
  })();
}
