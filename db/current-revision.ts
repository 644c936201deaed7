import type { Database } from 'better-sqlite3';
import { readRevision } from './projects.repository.ts';
import { Refusal } from './refusal.ts';

/** The project's revision, when it is the one the sender last saw; throws Refusal otherwise. */
export function currentRevision(db: Database, projectId: number, seen: number): number {
  const revision = readRevision(db, projectId);
  if (revision === undefined) throw noSuchProject(projectId);
  if (revision !== seen)
    throw new Refusal(
      'revision-stale',
      `The project is at revision ${revision}, not ${seen}: it was changed elsewhere.`,
      {
        wayOut: 'Read the project again and make the change once more. Nothing was lost or overwritten.',
        field: 'revision',
        revision,
      },
    );
  return revision;
}

/** Throws Refusal when there is no such project. */
export function requireProject(db: Database, projectId: number): void {
  if (readRevision(db, projectId) === undefined) throw noSuchProject(projectId);
}

export function noSuchProject(projectId: number): Refusal {
  return new Refusal('not-found', `There is no project ${projectId}.`, {
    wayOut: 'Open one from the list of projects.',
  });
}
