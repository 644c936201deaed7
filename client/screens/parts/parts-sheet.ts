import type { ProjectState } from '../../../server/http/contract.ts';
import type { Catalogue } from '../../../server/planning/product.ts';
import { createSheet, type Sheet } from '../../grid/sheet-grid.ts';
import type { RowCommand } from '../../grid/sheet-keys.ts';
import { actions, getState, subscribe } from '../../state/store.ts';
import { type PartBook, partBook } from './part-book.ts';
import { CORNER_FIELDS, partColumns } from './part-columns.ts';
import { blankLine, comingLine, type PartSheetRow, partLines, totalsLine } from './part-sheet-row.ts';
import { runRowCommand } from './row-commands.ts';
import { rowKeys } from './row-keys.ts';
import { typedEdits } from './typed-edits.ts';
import { viewState } from './view-state.ts';

export interface PartsSheet {
  /** The element that holds the grid; it lives as long as the page. */
  readonly host: HTMLElement;
  command(command: RowCommand): void;
  addPart(): void;
  showCorners(visible: boolean): void;
  resume(): void;
}

/** The part list: joins the sheet to the store. */
export function createPartsSheet(project: ProjectState, catalogue: Catalogue): PartsSheet {
  const host = document.createElement('div');
  host.className = 'sheet-host';
  const keys = rowKeys();
  const typed = typedEdits(keys, draw);
  let book: PartBook = partBook(project, catalogue);
  let drawn: { readonly project: ProjectState; readonly catalogue: Catalogue } = { project, catalogue };
  let lines: ReadonlyMap<string, PartSheetRow> = new Map();
  let cornersShown = false;

  const sheet: Sheet<PartSheetRow> = createSheet<PartSheetRow>({
    host,
    label: 'Part list',
    columns: partColumns(() => book),
    write: (edits, kind) => typed.write(edits, kind, book),
    newKey: keys.newKey,
    rows: command,
    openFigure: (at) => void actions.openWorking(at),
    focused: (key) => actions.selectPart(key === null ? null : keys.idOf(key)),
  });

  function draw(): void {
    const { project, catalogue } = getState();
    if (project === null || catalogue === null) return;
    refreshBook(project, catalogue);
    if (drawn.project.id !== project.id) {
      lines = new Map();
      sheet.reset();
    }
    drawn = { project, catalogue };
    const rows = partLines(project, book, keys.keyOf, typed.waiting, lines);
    const stored = new Set(rows.map(({ key }) => key));
    for (const key of typed.comingKeys())
      if (!stored.has(key)) rows.push(comingLine(key, rows.length + 1, typed.waiting.get(key) ?? {}, book));
    rows.push(blankLine(typed.blankKey(), rows.length + 1, book));
    lines = new Map(rows.map((line) => [line.key, line]));
    sheet.update(rows, totalsLine(project, book));
  }

  function refreshBook(project: ProjectState, catalogue: Catalogue): void {
    const same =
      drawn.project.rows.recipes === project.rows.recipes &&
      drawn.project.settings === project.settings &&
      drawn.catalogue === catalogue;
    if (same) return;
    book = partBook(project, catalogue);
    sheet.redrawHeaders();
  }

  function command(name: RowCommand, selected: readonly string[] = sheet.selectedKeys()): void {
    void runRowCommand(name, selected, keys, { draw, goTo: sheet.goTo, follow: sheet.follow });
  }

  function goWhereAsked(): void {
    const { focus, screen, project } = getState();
    if (focus?.table !== 'parts' || screen !== 'parts' || project === null || !host.isConnected) return;
    const field = focus.field ?? 'name';
    if (CORNER_FIELDS.some((corner) => corner === field)) viewState.setCorners(true);
    const first = project.rows.parts[0];
    const key = focus.id ?? first?.id;
    sheet.goTo(key === undefined ? typed.blankKey() : keys.keyOf(key), field);
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
    command,
    addPart: () => sheet.goTo(typed.blankKey(), 'name'),
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
