import type { Database } from 'better-sqlite3';
import type { UnitSystem } from '../server/planning/project-input.ts';
import type { ReadLengthCell } from './row-columns.ts';
import type { RowJournal } from './row-journal.ts';
import { readCalculations } from './rows.repository.ts';

/**
 * Makes the calculations of a project self-contained in the units they were written in, before its units are switched.
 * Cells written by this version are so already; those stored by an earlier one are not.
 */
export function settleCalculations(
  db: Database,
  projectId: number,
  journal: RowJournal,
  readLengthCell: ReadLengthCell,
  units: UnitSystem,
): void {
  for (const { table, field, id, text } of readCalculations(db, projectId)) {
    const cell = field.kind === 'length' ? readLengthCell(text, units) : { text };
    if (cell.text !== text) journal.update(table, id, { [field.column]: cell.text });
  }
}
