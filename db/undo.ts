import type { Database } from 'better-sqlite3';
import type { AppliedChange } from './apply-changes.ts';
import { currentRevision } from './current-revision.ts';
import { firstUndoneEdit, lastDoneEdit, markEdit, type RowEdit } from './edits.repository.ts';
import { writeRevision } from './projects.repository.ts';
import { Refusal } from './refusal.ts';
import { openRowJournal, type RowJournal } from './row-journal.ts';
import type { StoredRow } from './rows.repository.ts';

/** Takes back the last edit that stands, as one transaction and one new revision. Throws Refusal. */
export function undoEdit(db: Database, projectId: number, revision: number, now: Date): AppliedChange {
  return db
    .transaction(() => {
      const current = currentRevision(db, projectId, revision);
      const edit = lastDoneEdit(db, projectId);
      if (edit === undefined)
        throw new Refusal('nothing-to-undo', 'There is nothing to undo.', { wayOut: 'Go on editing.' });
      markEdit(db, edit.id, 'undone');
      return replay(
        db,
        projectId,
        current + 1,
        now,
        edit.rows.map(({ before, after, ...row }) => ({ ...row, before: after, after: before })),
      );
    })
    .immediate();
}

/** Does the last edit that was taken back again. Throws Refusal. */
export function redoEdit(db: Database, projectId: number, revision: number, now: Date): AppliedChange {
  return db
    .transaction(() => {
      const current = currentRevision(db, projectId, revision);
      const edit = firstUndoneEdit(db, projectId);
      if (edit === undefined)
        throw new Refusal('nothing-to-redo', 'There is nothing to redo.', {
          wayOut: 'Redo is possible only right after an undo.',
        });
      markEdit(db, edit.id, 'done');
      return replay(db, projectId, current + 1, now, edit.rows);
    })
    .immediate();
}

function replay(
  db: Database,
  projectId: number,
  revision: number,
  now: Date,
  rows: readonly RowEdit[],
): AppliedChange {
  db.pragma('defer_foreign_keys = ON');
  const journal = openRowJournal(db, projectId);
  for (const row of rows) replayRow(journal, row);
  writeRevision(db, projectId, revision, now.toISOString());
  return { revision, inserted: {}, ...journal.changes() };
}

function replayRow(journal: RowJournal, { table, id, before, after }: RowEdit): void {
  if (table === 'settings') journal.updateSettings(after as StoredRow);
  else if (after === null) journal.remove(table, id);
  else if (before === null) journal.insert(table, after);
  else journal.update(table, id, after);
}
