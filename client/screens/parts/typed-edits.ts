import type { Change, ProjectState } from '../../../server/http/contract.ts';
import type { CellEdit } from '../../grid/grid-column.ts';
import type { EditKind } from '../../grid/sheet-edits.ts';
import { actions, getState } from '../../state/store.ts';
import type { PartBook } from './part-book.ts';
import { type PartWrite, partWrites } from './part-writes.ts';
import { carriedOn } from './row-changes.ts';
import type { RowKeys } from './row-keys.ts';

export interface TypedEdits {
  /** Sends cell texts; they show as waiting until the answer is there. */
  write(edits: readonly CellEdit[], kind: EditKind, book: PartBook): void;
  /** Texts on their way: row key -> field -> what will be stored. */
  readonly waiting: ReadonlyMap<string, Readonly<Record<string, string>>>;
  /** Keys of rows typed here that the server has not numbered yet, in the order they were typed. */
  comingKeys(): readonly string[];
  /** Key of the blank line at the end. */
  blankKey(): string;
}

/** What is typed, pasted, filled and cleared in the part list, between the keystroke and the answer. */
export function typedEdits(keys: RowKeys, draw: () => void): TypedEdits {
  const waiting = new Map<string, Readonly<Record<string, string>>>();
  /** New rows under way: key -> promise that settles with the answer. */
  const coming = new Map<string, Promise<unknown>>();
  let blankKey = keys.newKey();

  function write(edits: readonly CellEdit[], kind: EditKind, book: PartBook): void {
    const { writes, refused } = partWrites(edits, book);
    const [text] = refused;
    if (text !== undefined)
      actions.say({ kind: 'error', text, wayOut: 'Choose one of them, or press Delete for the usual one.' });
    if (writes.length > 0) void send(writes, edits.length, kind);
  }

  async function send(writes: readonly PartWrite[], cells: number, kind: EditKind): Promise<void> {
    const project = getState().project;
    if (project === null) return;
    // An edit of a row that is itself still on its way needs that row's id first.
    const unsettled = writes.flatMap(({ key }) => coming.get(key) ?? []);
    for (const { key, values } of writes) waiting.set(key, { ...waiting.get(key), ...values });
    const made = writes.map(({ key }) => key).filter((key) => keys.idOf(key) === null && !coming.has(key));
    if (made.includes(blankKey)) blankKey = keys.newKey();
    const sent = Promise.all(unsettled).then(() => {
      const changes = writes.map((one): Change => changeFor(one, project, kind));
      return actions.change(changes, labelFor(kind, cells), project.id);
    });
    for (const key of made) coming.set(key, sent);
    draw();
    const answer = await sent;
    for (const [tempId, id] of Object.entries(answer?.inserted ?? {})) keys.pair(tempId, id);
    for (const key of made) coming.delete(key);
    for (const { key, values } of writes) settle(key, values);
    draw();
  }

  function changeFor({ key, values }: PartWrite, project: ProjectState, kind: EditKind): Change {
    const id = keys.idOf(key);
    if (id !== null) return { op: 'update', table: 'parts', id, values };
    // A part typed by hand carries on from the one above; a pasted one is what was pasted.
    const start = kind === 'type' ? carriedOn(project.rows.parts.at(-1) ?? null) : { quantity: '1' };
    return { op: 'insert', table: 'parts', tempId: key, values: { ...start, ...values } };
  }

  /** Takes answered texts off the waiting list, except those typed over once more in the meantime. */
  function settle(key: string, values: PartWrite['values']): void {
    const left = { ...waiting.get(key) };
    for (const [field, text] of Object.entries(values)) if (left[field] === text) delete left[field];
    if (Object.keys(left).length === 0) waiting.delete(key);
    else waiting.set(key, left);
  }

  return { write, waiting, comingKeys: () => [...coming.keys()], blankKey: () => blankKey };
}

function labelFor(kind: EditKind, cells: number): string | undefined {
  return kind === 'type' ? undefined : `${kind} ${cells === 1 ? '1 cell' : `${cells} cells`}`;
}
