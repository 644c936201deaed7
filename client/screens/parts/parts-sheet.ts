import type { Change, PartRow, ProjectState } from '../../../server/http/contract.ts';
import type { CellEdit } from '../../grid/grid-column.ts';
import { createSheet, type EditKind, type Sheet } from '../../grid/sheet-grid.ts';
import type { RowCommand } from '../../grid/sheet-keys.ts';
import { actions, getState, subscribe } from '../../state/store.ts';
import { type PartBook, partBook } from './part-book.ts';
import { CORNER_FIELDS, partColumns } from './part-columns.ts';
import { blankLine, comingLine, type PartSheetRow, partLines, totalsLine } from './part-sheet-row.ts';
import { type PartWrite, partWrites } from './part-writes.ts';
import { carriedOn, deleteParts, duplicateParts, insertPart, moveParts } from './row-changes.ts';
import { rowKeys } from './row-keys.ts';
import { viewState } from './view-state.ts';

export interface PartsSheet {
  /** The element that holds the grid; it lives as long as the page. */
  readonly host: HTMLElement;
  command(command: RowCommand): void;
  addPart(): void;
  showCorners(visible: boolean): void;
  resume(): void;
}

/** The part list: joins the sheet to the store. Typed text is shown at once, marked as waiting until the answer comes. */
export function createPartsSheet(): PartsSheet {
  const host = document.createElement('div');
  host.className = 'sheet-host parts-sheet';
  const keys = rowKeys();
  const waiting = new Map<string, Readonly<Record<string, string>>>();
  /** Rows typed here that the server has not numbered: key -> promise that settles with the answer. */
  const coming = new Map<string, Promise<unknown>>();
  let blankKey = keys.newKey();
  let book: PartBook | null = null;
  let seen: { project: ProjectState | null; rows: unknown; settings: unknown; catalogue: unknown } | null =
    null;
  let lines = new Map<string, PartSheetRow>();

  const sheet: Sheet<PartSheetRow> = createSheet<PartSheetRow>({
    host,
    label: 'Part list',
    columns: partColumns(() => book ?? currentBook()),
    write,
    newKey: keys.newKey,
    rows: (command, selected) => runCommand(command, selected),
    openFigure: (at) => void actions.openWorking(at),
    focused: (key) => actions.selectPart(key === null ? null : keys.idOf(key)),
  });

  function write(edits: readonly CellEdit[], kind: EditKind): void {
    if (book === null) return;
    const { writes, refused } = partWrites(edits, book);
    if (refused.length > 0)
      actions.say({
        kind: 'error',
        text: refused[0] ?? '',
        wayOut: 'Choose one of them, or press Delete for the usual one.',
      });
    if (writes.length > 0) void send(writes, edits.length, kind);
  }

  async function send(writes: readonly PartWrite[], cells: number, kind: EditKind): Promise<void> {
    const project = getState().project;
    if (project === null) return;
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

  function draw(): void {
    const { project, catalogue } = getState();
    if (project === null || catalogue === null) return;
    if (
      book === null ||
      seen?.rows !== project.rows.recipes ||
      seen.settings !== project.settings ||
      seen.catalogue !== catalogue
    ) {
      book = partBook(project, catalogue);
      sheet.redrawHeaders();
    }
    if (seen?.project?.id !== project.id) {
      lines = new Map();
      if (seen !== null) sheet.reset();
    }
    seen = { project, rows: project.rows.recipes, settings: project.settings, catalogue };
    const parts = partLines(project, book, keys.keyOf, waiting, lines);
    const drawn = new Set(parts.map(({ key }) => key));
    const arriving = [...coming.keys()].filter((key) => !drawn.has(key));
    for (const key of arriving) parts.push(comingLine(key, parts.length + 1, waiting.get(key) ?? {}, book));
    parts.push(blankLine(blankKey, parts.length + 1, book));
    lines = new Map(parts.map((line) => [line.key, line]));
    sheet.update(parts, totalsLine(project, book));
  }

  function runCommand(command: RowCommand, selected: readonly string[]): void {
    const parts = getState().project?.rows.parts ?? [];
    const ids = new Set(selected.map(keys.idOf));
    const block = parts.filter(({ id }) => ids.has(id));
    const last = block.at(-1);
    const below = last === undefined ? null : (parts[parts.indexOf(last) + 1] ?? null);
    const count = block.length === 1 ? `part ${block[0]?.name || 'without a name'}` : `${block.length} parts`;
    if (command === 'insert-below')
      void insertAndGo(
        insertPart(keys.newKey(), last ?? parts.at(-1) ?? null, below?.id ?? null),
        'add a part',
      );
    else if (block.length === 0) return;
    else if (command === 'duplicate')
      void insertAndGo(duplicateParts(block, below, block.map(keys.newKey)), `duplicate ${count}`);
    else if (command === 'delete') void remove(block, count);
    else void moveBlock(parts, block, command === 'move-up' ? 'up' : 'down', count);
  }

  async function insertAndGo(changes: readonly Change[], label: string): Promise<void> {
    const answer = await actions.change(changes, label);
    draw();
    const first = changes[0]?.op === 'insert' ? answer?.inserted[changes[0].tempId ?? ''] : undefined;
    if (first !== undefined) sheet.goTo(keys.keyOf(first), 'name');
  }

  async function remove(block: readonly PartRow[], count: string): Promise<void> {
    const answer = await actions.change(deleteParts(block), `delete ${count}`);
    if (answer !== null) actions.say({ kind: 'info', text: `Deleted ${count}. Ctrl+Z brings it back.` });
  }

  async function moveBlock(
    parts: readonly PartRow[],
    block: readonly PartRow[],
    direction: 'up' | 'down',
    count: string,
  ): Promise<void> {
    const changes = moveParts(parts, block, direction);
    if (changes.length === 0 || (await actions.change(changes, `move ${count} ${direction}`)) === null)
      return;
    draw();
    sheet.follow(block.map(({ id }) => keys.keyOf(id)));
  }

  function goWhereAsked(): void {
    const { focus, screen, project } = getState();
    if (focus?.table !== 'parts' || screen !== 'parts' || project === null || !host.isConnected) return;
    const field = focus.field ?? 'name';
    if (CORNER_FIELDS.some((corner) => corner === field)) viewState.setCorners(true);
    sheet.goTo(focus.id === null ? (project.rows.parts[0]?.id ?? blankKey) : keys.keyOf(focus.id), field);
    actions.arrived();
  }

  let cornersShown = false;
  let due = false;
  subscribe(() => {
    if (due) return;
    due = true;
    // Not at once: whoever sent an edit first learns the new rows' ids, and the screen stands in the document.
    setTimeout(() => {
      due = false;
      const { project, catalogue } = getState();
      if (project !== seen?.project || catalogue !== seen?.catalogue) draw();
      goWhereAsked();
    });
  });
  draw();

  return {
    host,
    command: (command) => runCommand(command, sheet.selectedKeys()),
    addPart: () => sheet.goTo(blankKey, 'name'),
    showCorners: (visible) => {
      if (visible !== cornersShown) sheet.showColumns(CORNER_FIELDS, visible);
      cornersShown = visible;
    },
    resume: () => {
      sheet.resume();
      goWhereAsked();
    },
  };
}

function labelFor(kind: EditKind, cells: number): string | undefined {
  const many = cells === 1 ? '1 cell' : `${cells} cells`;
  switch (kind) {
    case 'paste':
      return `paste ${many}`;
    case 'fill':
      return `fill ${many}`;
    case 'clear':
      return `clear ${many}`;
    case 'cut':
      return `cut ${many}`;
    case 'type':
      return undefined;
  }
}

/** The book before the first drawing. */
function currentBook(): PartBook {
  const { project, catalogue } = getState();
  if (project === null || catalogue === null) throw new Error('the part list has no project yet');
  return partBook(project, catalogue);
}
