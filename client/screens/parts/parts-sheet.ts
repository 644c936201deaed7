import type { ProjectState } from '../../../server/http/contract.ts';
import type { Catalogue } from '../../../server/planning/product.ts';
import { type ColumnLayout, USUAL_LAYOUT } from '../../grid/column-layout.ts';
import type { CellEdit } from '../../grid/grid-column.ts';
import type { EditKind } from '../../grid/sheet-edits.ts';
import { createSheet, type Sheet } from '../../grid/sheet-grid.ts';
import type { RowCommand } from '../../grid/sheet-keys.ts';
import { actions, getState, subscribe } from '../../state/store.ts';
import { columnMemory } from './column-memory.ts';
import { openColumnFilter } from './open-column-filter.ts';
import { type PartBook, partBook } from './part-book.ts';
import { CORNER_FIELDS, partColumns } from './part-columns.ts';
import { blankLine, comingLine, type PartSheetRow, partLines, totalsLine } from './part-sheet-row.ts';
import { partWrites } from './part-writes.ts';
import { runRowCommand, runRowDrop } from './row-commands.ts';
import { rowKeys } from './row-keys.ts';
import type { ColumnActs } from './tools/columns-panel.ts';
import { typedEdits } from './typed-edits.ts';
import { keepOrder } from './view/keep-order.ts';
import { type ListShown, listShown } from './view/list-shown.ts';
import {
  type FilterField,
  isFiltered,
  withGroupOpen,
  withNextSort,
  withoutSort,
  withTouched,
} from './view/list-view.ts';

export interface PartsSheet {
  /** The element that holds the grid; it lives as long as the page. */
  readonly host: HTMLElement;
  readonly list: ListShown;
  readonly columns: ColumnActs;
  book(): PartBook;
  command(command: RowCommand): void;
  addPart(): void;
  /** Makes the order shown the order of the list. */
  keepThisOrder(): Promise<void>;
  takeFocus(): void;
  resume(): void;
}

/** The part list: joins the sheet to the store. */
export function createPartsSheet(project: ProjectState, catalogue: Catalogue): PartsSheet {
  const host = document.createElement('div');
  host.className = 'sheet-host';
  const keys = rowKeys();
  const typed = typedEdits(keys, draw);
  const columns = partColumns(() => book);
  const columnsById = new Map(columns.map((column) => [column.id, column]));
  const list = listShown(columnsById, redraw);
  let book: PartBook = partBook(project, catalogue);
  let drawn: { readonly project: ProjectState | null; readonly catalogue: Catalogue } = {
    project: null,
    catalogue,
  };
  let lines: ReadonlyMap<string, PartSheetRow> = new Map();
  /** From the moment a typed cell is sent until its editor is closed: nothing moves in between. */
  let holding = false;
  /** Rows given another group, which the eye should be drawn to once they are there. */
  let regrouped: readonly string[] = [];

  const sheet: Sheet<PartSheetRow> = createSheet<PartSheetRow>({
    host,
    label: 'Part list',
    columns,
    write,
    newKey: keys.newKey,
    rows: command,
    dropped: (selected, gap) =>
      void runRowDrop(selected, gap, keys, {
        draw,
        follow: sheet.follow,
        isSorted: () => list.view().sort !== null,
        oneGroup: (those) => new Set(those.map(list.headingOf)).size === 1,
      }),
    openFigure: (at) => void actions.openWorking(at),
    focused: (key) => actions.selectPart(key === null ? null : keys.idOf(key)),
    sort: (columnId) => list.change((view) => withNextSort(view, columnId)),
    filter: (columnId, button) => {
      const column = columnsById.get(columnId);
      const parts = [...lines.values()].filter(({ kind }) => kind === 'part');
      if (column !== undefined) openColumnFilter(button, columnId as FilterField, column, parts, book, list);
    },
    openGroup,
    arranged: (layout) => {
      columnMemory.set(layout);
      actions.redraw();
    },
    editingEnded: () => {
      // After the key that closed the editor has moved the focus on.
      setTimeout(() => {
        holding = false;
        if (isArranged()) draw();
      });
    },
  });
  sheet.columns.arrange(columnMemory.get());

  function isArranged(): boolean {
    const view = list.view();
    return isFiltered(view) || view.sort !== null || view.groupBy !== null;
  }

  /** A row that is folded away leaves the focus on its heading. */
  function openGroup(key: string, open?: boolean): boolean {
    const heading = list.headingOf(key);
    if (heading === null) return false;
    if (open === false && key !== heading) sheet.goTo(heading, 'name');
    return list.openGroup(key, open);
  }

  function redraw(): void {
    draw();
    actions.redraw();
  }

  function draw(): void {
    const { project, catalogue } = getState();
    if (project === null || catalogue === null) return;
    refreshBook(project, catalogue);
    if (drawn.project?.id !== project.id) {
      lines = new Map();
      sheet.reset();
      list.enter(project.id);
    }
    if (drawn.project?.rows.parts !== project.rows.parts)
      sheet.columns.setUsual(CORNER_FIELDS, hasRoundedCorner(project));
    drawn = { project, catalogue };
    const hold = holding || sheet.isEditing();
    const parts = partLines(project, book, keys.keyOf, typed.waiting, lines);
    const rows = list.rows(parts, project, book, hold);
    const stored = new Set(parts.map(({ key }) => key));
    const others: PartSheetRow[] = [];
    for (const key of typed.comingKeys())
      if (!stored.has(key))
        others.push(comingLine(key, parts.length + others.length + 1, typed.waiting.get(key) ?? {}, book));
    others.push(blankLine(typed.blankKey(), parts.length + others.length + 1, book));
    lines = new Map([...parts, ...others].map((line) => [line.key, line]));
    sheet.update([...rows, ...others], totalsLine(project, book, totalsOf()));
    const { sort, filters } = list.view();
    sheet.mark({ sorted: sort, filtered: new Set(Object.keys(filters)) });
    if (!hold && regrouped.length > 0) {
      sheet.flash(regrouped);
      regrouped = [];
    }
  }

  function totalsOf(): string {
    return isFiltered(list.view()) ? `Total of all ${list.counts().all}` : 'Total';
  }

  function refreshBook(project: ProjectState, catalogue: Catalogue): void {
    const same =
      drawn.project?.rows.recipes === project.rows.recipes &&
      drawn.project.settings === project.settings &&
      drawn.catalogue === catalogue;
    if (same) return;
    book = partBook(project, catalogue);
    sheet.redrawHeaders();
  }

  function write(edits: readonly CellEdit[], kind: EditKind): void {
    if (kind === 'type') holding = true;
    const all = [...new Set(edits.map(({ key }) => key))];
    const isNew = (key: string): boolean => lines.get(key)?.kind !== 'part';
    const { groupBy } = list.view();
    const moving =
      groupBy === null
        ? []
        : partWrites(edits, book).writes.filter(({ values }) => values[groupBy] !== undefined);
    regrouped = moving.map(({ key }) => key);
    typed.write(edits, kind, book);
    list.change((view) =>
      moving.reduce(
        (now, { values }) => withGroupOpen(now, values[groupBy ?? 'section'] ?? '', true),
        withTouched(
          view,
          all.filter((key) => !isNew(key)),
          all.filter(isNew),
        ),
      ),
    );
  }

  function command(name: RowCommand, selected: readonly string[] = sheet.selectedKeys()): void {
    const anchor = sheet.anchorKey();
    const under = selected.length === 0 && anchor !== null ? list.lastUnder(anchor) : null;
    void runRowCommand(name, selected, keys, {
      draw,
      goTo: (key, columnId) => {
        list.reveal(key);
        sheet.goTo(key, columnId);
      },
      follow: sheet.follow,
      isSorted: () => list.view().sort !== null,
      around: list.around,
      insertBelow: under,
      added: (added, copied) =>
        list.change((view) => withTouched(view, copied ? added : [], copied ? [] : added)),
    });
  }

  async function keepThisOrder(): Promise<void> {
    const { project } = getState();
    if (project === null) return;
    const wanted = list.fullOrder().flatMap(({ part }) => part?.id ?? []);
    const changes = keepOrder(
      project.rows.parts.map(({ id }) => id),
      wanted,
    );
    if (changes.length > 0 && (await actions.change(changes, 'put the parts in order')) === null) return;
    list.change(withoutSort);
    actions.say({ kind: 'info', text: 'The list is in this order now. Ctrl+Z takes it back.' });
  }

  function arrange(layout: ColumnLayout): void {
    sheet.columns.arrange(layout);
    columnMemory.set(layout);
    actions.redraw();
  }

  function goWhereAsked(): void {
    const { focus, screen, project } = getState();
    if (focus?.table !== 'parts' || screen !== 'parts' || project === null || !host.isConnected) return;
    const field = focus.field ?? 'name';
    const layout = sheet.columns.layout();
    if (columnsById.has(field) && !sheet.columns.isShown(field))
      arrange({ ...layout, visible: { ...layout.visible, [field]: true } });
    const id = focus.id ?? project.rows.parts[0]?.id;
    const key = id === undefined ? typed.blankKey() : keys.keyOf(id);
    if (id !== undefined) list.reveal(key);
    sheet.goTo(key, field);
    actions.arrived();
  }

  let due = false;
  subscribe(() => {
    if (due) return;
    due = true;
    // Not at once: whoever sent an edit first learns the new rows' ids, and the screen stands in the document.
    setTimeout(() => {
      due = false;
      const { project, catalogue } = getState();
      if (project !== drawn.project || catalogue !== drawn.catalogue) draw();
      goWhereAsked();
    });
  });
  draw();

  return {
    host,
    list,
    book: () => book,
    columns: {
      columns,
      layout: sheet.columns.layout,
      isShown: sheet.columns.isShown,
      arrange,
      usual: () => arrange(USUAL_LAYOUT),
    },
    command,
    addPart: () => sheet.goTo(typed.blankKey(), 'name'),
    keepThisOrder,
    takeFocus: sheet.takeFocus,
    resume: () => {
      sheet.resume();
      goWhereAsked();
    },
  };
}

/** The columns for corner radii are usually shown when a part has a rounded corner. */
function hasRoundedCorner({ rows }: ProjectState): boolean {
  return rows.parts.some((part) => CORNER_FIELDS.some((field) => part[field] !== ''));
}
