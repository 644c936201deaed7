import type { Database } from 'better-sqlite3';
import type { ProjectSettings, UnitSystem } from '../server/planning/project-input.ts';
import type { Change } from './change.ts';
import { noSuchProject } from './current-revision.ts';
import { placeInFront } from './place-in-front.ts';
import type { RowTable } from './project-rows.ts';
import { readSettings, settingsColumns } from './projects.repository.ts';
import { Refusal } from './refusal.ts';
import { renameSize, type SizeNames } from './rename-size.ts';
import { type ReadLengthCell, type RowReading, rowColumns, rowId, withInitialValues } from './row-columns.ts';
import type { RowJournal } from './row-journal.ts';
import { ROW_LAYOUTS } from './row-layouts.ts';
import { rowIdsReferringTo } from './rows.repository.ts';
import { settleCalculations } from './settle-calculations.ts';

interface Editing extends RowReading {
  readonly db: Database;
  readonly projectId: number;
  readonly newRows: Map<string, { readonly table: RowTable; readonly id: number }>;
  readonly sizeNames: SizeNames | undefined;
  units: UnitSystem;
  /** Cells rewritten because a size they use was renamed. */
  renamedCells: number;
}

export interface CarriedOut {
  /** tempId -> id */
  readonly inserted: Readonly<Record<string, string>>;
  readonly renamedCells: number;
}

/** How cells are read on their way into the database. */
export interface CellRules {
  readonly readLengthCell: ReadLengthCell;
  /** Only a list of inserts can do without. */
  readonly sizeNames?: SizeNames;
}

/**
 * Carries out changes one after the other through the journal; the caller holds the transaction. Answers the ids
 * of the new rows by their tempId. Throws Refusal with the path of the value that cannot be taken.
 */
export function carryOutChanges(
  db: Database,
  projectId: number,
  changes: readonly Change[],
  journal: RowJournal,
  { readLengthCell, sizeNames }: CellRules,
): CarriedOut {
  const settings = readSettings(db, projectId);
  if (settings === undefined) throw noSuchProject(projectId);
  db.pragma('defer_foreign_keys = ON');
  const editing: Editing = {
    db,
    projectId,
    journal,
    readLengthCell,
    sizeNames,
    newRows: new Map(),
    units: settings.units,
    renamedCells: 0,
  };
  const following = insertsFollowing(changes);
  changes.forEach((change, index) => {
    carryOut(editing, change, `changes.${index}`, following[index] ?? 0);
  });
  return {
    inserted: Object.fromEntries([...editing.newRows].map(([tempId, row]) => [tempId, String(row.id)])),
    renamedCells: editing.renamedCells,
  };
}

function carryOut(editing: Editing, change: Change, at: string, following: number): void {
  const { journal } = editing;
  if (change.op === 'settings') {
    const values = change.values as Partial<ProjectSettings>;
    journal.updateSettings(settingsColumns(values));
    if (values.units === undefined || values.units === editing.units) return;
    settleCalculations(editing.db, editing.projectId, journal, editing.readLengthCell, editing.units);
    editing.units = values.units;
    return;
  }
  const { table } = change;
  if (change.op === 'insert') {
    const id = journal.insert(table, {
      ...rowColumns(editing, table, withInitialValues(table, change.values, at), at),
      position: position(editing, table, change.before ?? null, at, { following }),
    });
    if (change.tempId !== undefined) nameNewRow(editing, change.tempId, { table, id }, at);
    return;
  }
  const id = rowId(editing, table, change.id, `${at}.id`);
  if (change.op === 'update') {
    if (table === 'sizes' && change.values.name !== undefined)
      rename(editing, id, String(change.values.name), `${at}.values.name`);
    journal.update(table, id, rowColumns(editing, table, change.values, at));
  } else if (change.op === 'delete') deleteRow(editing, table, id);
  else if (change.before !== change.id)
    journal.update(table, id, { position: position(editing, table, change.before, at, { moved: id }) });
}

function rename(editing: Editing, id: number, to: string, at: string): void {
  const { db, projectId, journal, sizeNames } = editing;
  if (sizeNames === undefined) throw new RangeError('carryOutChanges: a rename needs sizeNames');
  editing.renamedCells += renameSize(db, projectId, journal, sizeNames, { id, to, at });
}

/** For each change, how many inserts in front of the same row come right after it. */
function insertsFollowing(changes: readonly Change[]): number[] {
  const counts = new Array<number>(changes.length).fill(0);
  for (let index = changes.length - 2; index >= 0; index--) {
    const change = changes[index];
    const next = changes[index + 1];
    if (change?.op !== 'insert' || next?.op !== 'insert') continue;
    if (change.table === next.table && change.before === next.before)
      counts[index] = (counts[index + 1] ?? 0) + 1;
  }
  return counts;
}

function position(
  editing: Editing,
  table: RowTable,
  before: string | null,
  at: string,
  detail: { readonly following?: number; readonly moved?: number },
): number {
  const id = before === null ? null : rowId(editing, table, before, `${at}.before`);
  return placeInFront(editing.db, editing.projectId, editing.journal, table, id, detail);
}

/** Takes a row away with the rows that belong to it, and empties the cells that mention it. */
function deleteRow(editing: Editing, table: RowTable, id: number): void {
  const { db, projectId, journal } = editing;
  for (const layout of Object.values(ROW_LAYOUTS)) {
    for (const field of layout.fields) {
      if (field.refersTo !== table) continue;
      for (const referring of rowIdsReferringTo(db, projectId, layout.table, field, id)) {
        if (field.kind === 'parent') deleteRow(editing, layout.table, referring);
        else journal.update(layout.table, referring, { [field.column]: '' });
      }
    }
  }
  journal.remove(table, id);
}

function nameNewRow(
  editing: Editing,
  tempId: string,
  row: { readonly table: RowTable; readonly id: number },
  at: string,
): void {
  if (/^\d+$/.test(tempId) || editing.newRows.has(tempId))
    throw new Refusal('bad-request', `“${tempId.slice(0, 40)}” cannot be used as tempId.`, {
      wayOut: 'Use a text that is not a number, and a different one for every new row.',
      field: `${at}.tempId`,
    });
  editing.newRows.set(tempId, row);
}
