import type { Change } from './change.ts';
import type { RowTable } from './project-rows.ts';
import { SETTING_WORDS } from './projects.repository.ts';
import { ROW_LAYOUTS } from './row-layouts.ts';

/** Longest row name that a label repeats, characters. */
const LONGEST_NAME = 40;

/** A size given another name is renamed wherever it is used, which is more than a change of its row. */
type Deed = Change['op'] | 'rename';

/**
 * What an edit does, in the words of an undo menu: "change width of 3 parts", "add part “Left side”, delete 2
 * blends". `nameOf` gives a row's name by table and id, or an empty text.
 */
export function editLabel(
  changes: readonly Change[],
  nameOf: (table: RowTable, id: string) => string,
): string {
  const groups = new Map<
    string,
    { op: Deed; table: RowTable | null; ids: Set<string>; fields: Set<string>; newName: string }
  >();
  changes.forEach((change, index) => {
    const table = change.op === 'settings' ? null : change.table;
    const newName = newNameOf(change, nameOf);
    const op = newName === null ? change.op : 'rename';
    const key = `${op} ${table}`;
    const group = groups.get(key) ?? {
      op,
      table,
      ids: new Set(),
      fields: new Set(),
      newName: newName ?? '',
    };
    groups.set(key, group);
    group.ids.add(
      change.op === 'settings' ? '' : change.op === 'insert' ? (change.tempId ?? `new ${index}`) : change.id,
    );
    if (change.op === 'update' || change.op === 'settings')
      for (const field of Object.keys(change.values)) group.fields.add(field);
  });
  return [...groups.values()]
    .map(({ op, table, ids, fields, newName }) => {
      if (table === null) return `change ${settingWords(fields)}`;
      const rows = rowWords(table, [...ids], op === 'insert' ? () => '' : nameOf);
      if (op === 'update') return `change ${fieldWords(table, fields)} of ${rows}`;
      if (op === 'rename') return `rename ${rows}${ids.size === 1 ? ` to “${shortened(newName)}”` : ''}`;
      return `${{ insert: 'add', move: 'move', delete: 'delete' }[op as 'insert' | 'move' | 'delete']} ${rows}`;
    })
    .join(', ');
}

/** The name a size is given in place of another; null for any other change. */
function newNameOf(change: Change, nameOf: (table: RowTable, id: string) => string): string | null {
  if (change.op !== 'update' || change.table !== 'sizes') return null;
  const { name } = change.values;
  const before = nameOf('sizes', change.id);
  return typeof name === 'string' && before !== '' && name !== before ? name : null;
}

function settingWords(fields: ReadonlySet<string>): string {
  const [first] = fields;
  return fields.size === 1
    ? (SETTING_WORDS[first as keyof typeof SETTING_WORDS] ?? 'settings')
    : `${fields.size} settings`;
}

function fieldWords(table: RowTable, fields: ReadonlySet<string>): string {
  const [first] = fields;
  if (fields.size !== 1) return `${fields.size} cells`;
  return ROW_LAYOUTS[table].fields.find((field) => field.name === first)?.words ?? 'cells';
}

function rowWords(
  table: RowTable,
  ids: readonly string[],
  nameOf: (table: RowTable, id: string) => string,
): string {
  const { one, many } = ROW_LAYOUTS[table];
  if (ids.length !== 1) return `${ids.length} ${many}`;
  const name = nameOf(table, ids[0] ?? '').trim();
  if (name === '') return `1 ${one}`;
  return `${one} “${shortened(name)}”`;
}

function shortened(name: string): string {
  return name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME)}…` : name;
}
