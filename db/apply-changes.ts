import type { Database } from 'better-sqlite3';
import { type CellRules, carryOutChanges } from './carry-out-changes.ts';
import type { ChangeRequest } from './change.ts';
import { currentRevision } from './current-revision.ts';
import { editLabel } from './edit-label.ts';
import { dropUndoneEdits, insertEdit } from './edits.repository.ts';
import { writeRevision } from './projects.repository.ts';
import { openRowJournal, type RowChanges } from './row-journal.ts';
import { readStoredRow } from './rows.repository.ts';

export interface AppliedChange extends RowChanges {
  readonly revision: number;
  /** tempId -> id */
  readonly inserted: Readonly<Record<string, string>>;
}

/**
 * Carries out one change request as one transaction, one entry of the edit log and one new revision. A request
 * that changes nothing in the end makes neither. Throws Refusal, and then nothing of the request is kept.
 */
export function applyChanges(
  db: Database,
  projectId: number,
  request: ChangeRequest,
  given: Required<CellRules> & { readonly now: Date },
): AppliedChange {
  return db
    .transaction(() => {
      const revision = currentRevision(db, projectId, request.revision);
      const words =
        request.label ??
        editLabel(request.changes, (table, id) => {
          const name = readStoredRow(db, projectId, table, Number(id))?.name;
          return typeof name === 'string' ? name : '';
        });
      const journal = openRowJournal(db, projectId);
      const { inserted, renamedCells } = carryOutChanges(db, projectId, request.changes, journal, given);
      const rows = journal.edits();
      if (rows.length === 0) return { revision, inserted, ...journal.changes() };

      const at = given.now.toISOString();
      const label = request.label ?? withRenamedCells(words, renamedCells);
      dropUndoneEdits(db, projectId);
      insertEdit(db, projectId, { revision: revision + 1, label, rows, at });
      writeRevision(db, projectId, revision + 1, at);
      return { revision: revision + 1, inserted, ...journal.changes() };
    })
    .immediate();
}

function withRenamedCells(words: string, cells: number): string {
  if (cells === 0) return words;
  return `${words} in ${cells === 1 ? '1 calculation' : `${cells} calculations`}`;
}
