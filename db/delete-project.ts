import type { Database } from 'better-sqlite3';
import {
  insertDeletedProject,
  removeDeletedProject,
  removeProjectsDeletedBefore,
} from './deleted-projects.repository.ts';
import { Refusal } from './refusal.ts';

/** How long a deleted project can be brought back, days. */
export const DELETED_KEPT_DAYS = 30;

const DAY_MS = 24 * 60 * 60 * 1000;

/** Puts a project aside with its rows and its undo, and lets go of those that were put aside too long ago. */
export function deleteProject(db: Database, projectId: number, now: Date): void {
  db.transaction(() => {
    insertDeletedProject(db, projectId, now.toISOString());
    forgetDeletedProjects(db, now);
  }).immediate();
}

/** Removes for good the projects that were deleted more than `DELETED_KEPT_DAYS` ago. */
export function forgetDeletedProjects(db: Database, now: Date): void {
  removeProjectsDeletedBefore(db, new Date(now.getTime() - DELETED_KEPT_DAYS * DAY_MS).toISOString());
}

/** Makes a deleted project what it was. Throws Refusal when it is not, or no longer, among the deleted ones. */
export function bringBackProject(db: Database, projectId: number): void {
  if (!removeDeletedProject(db, projectId))
    throw new Refusal('not-found', `There is no deleted project ${projectId}.`, {
      wayOut: `Deleted projects are kept for ${DELETED_KEPT_DAYS} days; after that, only a backup brings one back.`,
    });
}
