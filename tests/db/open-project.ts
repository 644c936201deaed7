import type { Database } from 'better-sqlite3';
import { onTestFinished } from 'vitest';
import { type AppliedChange, applyChanges } from '../../db/apply-changes.ts';
import type { Change } from '../../db/change.ts';
import { createProject } from '../../db/create-project.ts';
import { openDatabase } from '../../db/open.ts';
import type { RowTable } from '../../db/project-rows.ts';
import { readRevision } from '../../db/projects.repository.ts';
import { readProject } from '../../db/read-project.ts';
import { redoEdit, undoEdit } from '../../db/undo.ts';
import { freshFile } from './fresh-file.ts';
import { plainSizeNames } from './plain-size-names.ts';
import { readPlainMillimetres } from './read-plain-millimetres.ts';
import { smallProject } from './small-project.ts';

export const now = new Date('2026-03-07T09:05:01.250Z');
export const given = { readLengthCell: readPlainMillimetres, sizeNames: plainSizeNames, now };

export interface OpenProject {
  readonly db: Database;
  readonly path: string;
  readonly id: number;
  readonly revision: () => number;
  readonly change: (...changes: Change[]) => AppliedChange;
  readonly undo: () => AppliedChange;
  readonly redo: () => AppliedChange;
  /** Ids of a list in its order. */
  readonly ids: (table: RowTable) => string[];
  /** Every stored column of every row of the project, settings included, and of no other table. */
  readonly dump: () => unknown;
}

/** The small project in a fresh database, with short words for what the tests do to it. */
export function openProject(): OpenProject {
  const path = freshFile();
  const db = openDatabase(path);
  onTestFinished(() => {
    db.close();
  });
  return projectIn(db, path, createProject(db, smallProject, given));
}

export function projectIn(db: Database, path: string, id: number): OpenProject {
  const revision = (): number => readRevision(db, id) ?? 0;
  return {
    db,
    path,
    id,
    revision,
    change: (...changes) => applyChanges(db, id, { revision: revision(), changes }, given),
    undo: () => undoEdit(db, id, revision(), now),
    redo: () => redoEdit(db, id, revision(), now),
    ids: (table) => readProject(db, id).rows[table].map((row) => row.id),
    dump: () => dump(db, id),
  };
}

const listTables = [
  'part',
  'recipe',
  'recipe_step',
  'blend',
  'blend_component',
  'usage_rule',
  'extra_line',
  'on_hand',
  'measurement',
  'named_size',
];

function dump(db: Database, id: number): unknown {
  const { revision, updated_at, ...project } = db
    .prepare('SELECT * FROM project WHERE id = ?')
    .get(id) as Record<string, unknown>;
  const lists = listTables.map((table) => [
    table,
    db.prepare(`SELECT * FROM ${table} WHERE project_id = ? ORDER BY id`).all(id),
  ]);
  return { project, ...Object.fromEntries(lists) };
}
