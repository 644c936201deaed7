import type { Change, PartRow } from '../../../server/http/contract.ts';
import type { RowCommand } from '../../grid/sheet-keys.ts';
import { actions, getState } from '../../state/store.ts';
import { deleteParts, duplicateParts, insertPart, moveParts } from './row-changes.ts';
import type { RowKeys } from './row-keys.ts';

/** What the commands need of the sheet they act on. */
export interface CommandedSheet {
  draw(): void;
  goTo(key: string, columnId: string): void;
  follow(keys: readonly string[]): void;
}

/** Carries out a whole-row command on the parts with these keys: one request and one undo step each. */
export async function runRowCommand(
  command: RowCommand,
  selected: readonly string[],
  keys: RowKeys,
  sheet: CommandedSheet,
): Promise<void> {
  const parts = getState().project?.rows.parts ?? [];
  const ids = new Set(selected.map(keys.idOf));
  const block = parts.filter(({ id }) => ids.has(id));
  const last = block.at(-1);
  const below = last === undefined ? null : (parts[parts.indexOf(last) + 1] ?? null);
  if (command === 'insert-below') {
    const above = last ?? parts.at(-1) ?? null;
    await insertAndGo(insertPart(keys.newKey(), above, below?.id ?? null), 'add a part');
    return;
  }
  if (block.length === 0) return;
  const words = blockWords(block);
  switch (command) {
    case 'duplicate':
      return insertAndGo(duplicateParts(block, below, block.map(keys.newKey)), `duplicate ${words}`);
    case 'delete':
      if ((await actions.change(deleteParts(block), `delete ${words}`)) !== null)
        actions.say({ kind: 'info', text: `Deleted ${words}. Ctrl+Z brings it back.` });
      return;
    case 'move-up':
    case 'move-down':
      return move(command === 'move-up' ? 'up' : 'down');
  }

  async function insertAndGo(changes: readonly Change[], label: string): Promise<void> {
    const answer = await actions.change(changes, label);
    sheet.draw();
    const [first] = changes;
    const id = first?.op === 'insert' ? answer?.inserted[first.tempId ?? ''] : undefined;
    if (id !== undefined) sheet.goTo(keys.keyOf(id), 'name');
  }

  async function move(direction: 'up' | 'down'): Promise<void> {
    const changes = moveParts(parts, block, direction);
    if (changes.length === 0) return;
    if ((await actions.change(changes, `move ${words} ${direction}`)) === null) return;
    sheet.draw();
    sheet.follow(block.map(({ id }) => keys.keyOf(id)));
  }
}

function blockWords(block: readonly PartRow[]): string {
  if (block.length !== 1) return `${block.length} parts`;
  const name = block[0]?.name ?? '';
  return name === '' ? 'a part without a name' : `part “${name}”`;
}
