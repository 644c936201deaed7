import type { Database } from 'better-sqlite3';
import { Refusal } from './refusal.ts';
import type { RowJournal } from './row-journal.ts';
import { readCalculations, readSizeNames } from './rows.repository.ts';

/** How names of sizes are judged and replaced. Given from outside: the database does not read calculations. */
export interface SizeNames {
  /** Why a size cannot be called so beside the others, `taken` where one of them is; null when it can. */
  readonly fault: (
    name: string,
    others: readonly string[],
  ) => { readonly taken: boolean; readonly message: string; readonly wayOut: string } | null;
  readonly same: (a: string, b: string) => boolean;
  /** The calculation with the size called otherwise; null when it would become too long to be read. */
  readonly renamed: (text: string, from: string, to: string) => string | null;
}

/**
 * Writes a named size's new name into every calculation that uses it; the size's own row is the caller's to write.
 * Where two sizes have the old name, calculations mean the first, and only its renaming touches them. Answers how
 * many cells it changed. Throws Refusal, located at `at`, when the name is taken or cannot be one.
 */
export function renameSize(
  db: Database,
  projectId: number,
  journal: RowJournal,
  names: SizeNames,
  size: { readonly id: number; readonly to: string; readonly at: string },
): number {
  const { id, to, at } = size;
  const from = String(journal.read('sizes', id)?.name ?? '');
  if (from === to) return 0;
  const all = readSizeNames(db, projectId);
  const others = all.filter((one) => one.id !== id).map(({ name }) => name);
  const fault = names.fault(to, others);
  if (fault !== null)
    throw new Refusal(fault.taken ? 'name-taken' : 'bad-request', fault.message, {
      wayOut: fault.wayOut,
      field: at,
    });
  if (all.find(({ name }) => names.same(name, from))?.id !== id) return 0;

  let cells = 0;
  for (const { table, field, id: row, text } of readCalculations(db, projectId)) {
    const renamed = names.renamed(text, from, to);
    if (renamed === null)
      throw new Refusal('bad-request', `“${to.slice(0, 40)}” is too long for the calculation “${text}”.`, {
        wayOut: 'Choose a shorter name, or give a name to part of that calculation first.',
        field: at,
      });
    if (renamed === text) continue;
    journal.update(table, row, { [field.column]: renamed });
    cells += 1;
  }
  return cells;
}
