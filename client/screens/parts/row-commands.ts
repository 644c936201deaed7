import type { Change, PartRow } from '../../../server/http/contract.ts';
import type { RowGap } from '../../grid/drag-rows.ts';
import type { RowCommand } from '../../grid/sheet-keys.ts';
import { actions, getState } from '../../state/store.ts';
import { dropParts } from './drop-rows.ts';
import { deleteParts, duplicateParts, insertPart, moveParts } from './row-changes.ts';
import type { RowKeys } from './row-keys.ts';

/** What the commands need of the sheet they act on. */
export interface CommandedSheet {
  draw(): void;
  goTo(key: string, columnId: string): void;
  follow(keys: readonly string[]): void;
  /** Whether the rows are shown in another order than the list's. */
  isSorted(): boolean;
  /** The rows above and below a block, as shown; null where its group ends. */
  around(firstKey: string, lastKey: string): { readonly above: string | null; readonly below: string | null };
  /** Where to insert when no part is selected: below the part with this key, else at the end. */
  readonly insertBelow: string | null;
  /** Told of the keys of new rows before they are drawn. */
  added(keys: readonly string[], copied: boolean): void;
}

/** Carries out a whole-row command on the parts with these keys: one request and one undo step each. */
export async function runRowCommand(
  command: RowCommand,
  selected: readonly string[],
  keys: RowKeys,
  sheet: CommandedSheet,
): Promise<void> {
  const parts = getState().project?.rows.parts ?? [];
  const from = selected.length === 0 && sheet.insertBelow !== null ? [sheet.insertBelow] : selected;
  const ids = new Set((command === 'insert-below' ? from : selected).map(keys.idOf));
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
    const made = Object.values(answer?.inserted ?? {});
    sheet.added(made.map(keys.keyOf), command === 'duplicate');
    sheet.draw();
    const [first] = changes;
    const id = first?.op === 'insert' ? answer?.inserted[first.tempId ?? ''] : undefined;
    if (id !== undefined) sheet.goTo(keys.keyOf(id), 'name');
  }

  async function move(direction: 'up' | 'down'): Promise<void> {
    if (sheet.isSorted()) return sayThatItIsSorted();
    const { above, below: next } = sheet.around(selected[0] ?? '', selected.at(-1) ?? '');
    const key = direction === 'up' ? above : next;
    const id = key === null ? null : keys.idOf(key);
    const changes = moveParts(
      parts,
      block,
      parts.find((part) => part.id === id),
      direction,
    );
    if (changes.length === 0) return;
    if ((await actions.change(changes, `move ${words} ${direction}`)) === null) return;
    sheet.draw();
    sheet.follow(block.map(({ id }) => keys.keyOf(id)));
  }
}

/** Puts parts where the mouse has let them go: one request and one undo step. */
export async function runRowDrop(
  selected: readonly string[],
  gap: RowGap,
  keys: RowKeys,
  sheet: Pick<CommandedSheet, 'draw' | 'follow' | 'isSorted'> & {
    /** Whether all of these rows stand in one group. */
    oneGroup(keys: readonly string[]): boolean;
  },
): Promise<void> {
  const parts = getState().project?.rows.parts ?? [];
  const ids = new Set(selected.map(keys.idOf));
  const block = parts.filter(({ id }) => ids.has(id));
  if (block.length === 0) return;
  if (sheet.isSorted()) return sayThatItIsSorted();
  const neighbour = gap.above !== null && sheet.oneGroup([...selected, gap.above]) ? gap.above : gap.below;
  if (neighbour !== null && !sheet.oneGroup([...selected, neighbour])) {
    actions.say({
      kind: 'info',
      text: 'A part stays in its group when it is moved.',
      wayOut: 'To put it into another group, change its section or material.',
    });
    return;
  }
  const idOf = (key: string | null): string | null => (key === null ? null : keys.idOf(key));
  const changes = dropParts(parts, block, {
    above: neighbour === gap.above ? idOf(gap.above) : null,
    below: idOf(gap.below),
  });
  if (changes.length === 0) return;
  if ((await actions.change(changes, `move ${blockWords(block)}`)) === null) return;
  sheet.draw();
  sheet.follow(block.map(({ id }) => keys.keyOf(id)));
}

function sayThatItIsSorted(): void {
  actions.say({
    kind: 'info',
    text: 'The list is shown sorted, so a part cannot be moved up or down.',
    wayOut: 'Go back to list order first, or keep this order.',
  });
}

function blockWords(block: readonly PartRow[]): string {
  if (block.length !== 1) return `${block.length} parts`;
  const name = block[0]?.name ?? '';
  return name === '' ? 'a part without a name' : `part “${name}”`;
}
