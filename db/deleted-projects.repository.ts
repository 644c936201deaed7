import type { Database } from 'better-sqlite3';
import type { DeletedProject } from './project-rows.ts';
import { prepared } from './statements.ts';

/** Projects that were deleted and can still be brought back. While one is here, no other statement finds it. */

const sql = {
  list: `SELECT CAST(project.id AS TEXT) AS id, name, deleted_at AS deletedAt FROM deleted_project JOIN project ON project.id = project_id ORDER BY deleted_at DESC, project.id DESC`,
  insert: `INSERT INTO deleted_project (project_id, deleted_at) VALUES (?, ?)`,
  remove: `DELETE FROM deleted_project WHERE project_id = ?`,
  removeProjects: `DELETE FROM project WHERE id IN (SELECT project_id FROM deleted_project WHERE deleted_at < ?)`,
};

/** The latest first. */
export function listDeletedProjects(db: Database): DeletedProject[] {
  return prepared(db, sql.list).all() as DeletedProject[];
}

export function insertDeletedProject(db: Database, projectId: number, at: string): void {
  prepared(db, sql.insert).run(projectId, at);
}

/** False when no such project was deleted. */
export function removeDeletedProject(db: Database, projectId: number): boolean {
  return prepared(db, sql.remove).run(projectId).changes > 0;
}

/** Removes for good, rows, edits and all, what was deleted before a moment. */
export function removeProjectsDeletedBefore(db: Database, moment: string): void {
  prepared(db, sql.removeProjects).run(moment);
}
