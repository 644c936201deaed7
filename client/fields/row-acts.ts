import { html, nothing, type TemplateResult } from 'lit-html';
import type { RowTable } from '../../server/http/contract.ts';
import { icon } from '../shell/icons.ts';
import { actions } from '../state/store.ts';
import { focusAct, focusAfterRemoval } from './focus-row.ts';

interface Row {
  readonly id: string;
}

/** Buttons that move a row within its list, one step of undo each. `name` says which row, for those who hear it. */
export function moveActs(table: RowTable, rows: readonly Row[], index: number, name: string): TemplateResult {
  const row = rows[index];
  if (row === undefined) return html``;
  const up = rows[index - 1];
  // A row moves down by standing in front of the one after the next.
  const afterNext = rows[index + 2]?.id ?? null;
  const last = index === rows.length - 1;
  const move = async (before: string | null, ...acts: string[]): Promise<void> => {
    await actions.change([{ op: 'move', table, id: row.id, before }], `move ${name}`);
    focusAct(table, row.id, ...acts);
  };
  return html`<button
      type="button"
      class="button plain icon"
      data-act="up"
      aria-label="Move ${name} up"
      title="Move up"
      ?disabled=${up === undefined}
      @click=${() => void move(up?.id ?? null, 'up', 'down')}
    >
      ${icon('up')}</button
    ><button
      type="button"
      class="button plain icon"
      data-act="down"
      aria-label="Move ${name} down"
      title="Move down"
      ?disabled=${last}
      @click=${() => void move(afterNext, 'down', 'up')}
    >
      ${icon('down')}
    </button>`;
}

/** A button that removes a row; undo brings it back, so nothing is asked. */
export function removeAct(table: RowTable, id: string, name: string): TemplateResult {
  return removeButton(name, async (event) => {
    const settle = focusAfterRemoval(event.currentTarget as Element);
    await actions.change([{ op: 'delete', table, id }], `remove ${name}`);
    settle();
  });
}

/** The button that takes something out of a list. `name` says what, for those who hear it. */
export function removeButton(name: string, remove: (event: Event) => unknown): TemplateResult {
  return html`<button
    type="button"
    class="button plain icon"
    data-act="remove"
    aria-label="Remove ${name}"
    title="Remove"
    @click=${remove}
  >
    ${icon('bin')}
  </button>`;
}

/** A button that adds to a list; `table` lets the focus come back to it when the list has become empty. */
export function addAct(
  table: string,
  words: string,
  add: () => void,
  extra: string | typeof nothing = nothing,
): TemplateResult {
  return html`<button type="button" class="button" data-add=${table} title=${extra} @click=${add}>
    ${icon('plus')} ${words}
  </button>`;
}
