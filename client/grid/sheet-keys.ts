import type { SheetRow } from './grid-column.ts';
import {
  type CellRange,
  moveHead,
  type Rectangle,
  rectangleOf,
  singleCell,
  wholeColumns,
  wholeRows,
} from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import { isInEditor, isInHeader, type SheetView } from './sheet-view.ts';

export type RowCommand = 'insert-below' | 'duplicate' | 'move-up' | 'move-down' | 'delete';

export interface KeyTarget {
  clear(range: Rectangle): void;
  fill(way: 'down' | 'right', range: Rectangle, alone: boolean): void;
  rows(command: RowCommand): void;
  openFigure(at: string): void;
  /** As in SheetOptions. */
  openGroup(key: string, open?: boolean): boolean;
  /** False when the column has no filter. */
  openFilter(columnId: string): boolean;
}

/** How far PageUp and PageDown move the head of a range. */
const PAGE_ROWS = 15;

/** What the keyboard does in a sheet beyond the grid's own: ranges, fills, clearing, whole rows, opening a figure. */
export function sheetKeys<Row extends SheetRow>(
  host: HTMLElement,
  view: SheetView<Row>,
  selection: RangeSelection,
  target: KeyTarget,
): void {
  host.addEventListener(
    'keydown',
    (event) => {
      const range = selection.get();
      if (isInEditor(event.target) || isInHeader(event.target) || range === null) return;
      const done =
        rowKeys(event) || groupKeys(event, range) || rangeKeys(event, range) || cellKeys(event, range);
      if (!done) return;
      event.preventDefault();
      event.stopPropagation();
    },
    { capture: true },
  );

  function rowKeys(event: KeyboardEvent): boolean {
    const command = rowCommand(event);
    if (command !== null) target.rows(command);
    return command !== null;
  }

  function groupKeys(event: KeyboardEvent, { anchor }: CellRange): boolean {
    const row = view.rowAt(anchor.row);
    if (row === undefined || event.ctrlKey || event.metaKey || event.shiftKey) return false;
    if (event.altKey && event.key === 'ArrowLeft') return target.openGroup(row.key, false);
    if (event.altKey && event.key === 'ArrowRight') return target.openGroup(row.key, true);
    const turns = event.key === 'Enter' || event.key === ' ';
    return turns && row.isHeading === true && figureInFocus() === undefined && target.openGroup(row.key);
  }

  function rangeKeys(event: KeyboardEvent, range: CellRange): boolean {
    const control = event.ctrlKey || event.metaKey;
    const size = view.size();
    if (control && !event.shiftKey && event.key.toLowerCase() === 'a')
      return setRange({
        anchor: { row: 0, column: 0 },
        head: { row: size.rows - 1, column: size.columns - 1 },
      });
    if (event.key === ' ' && event.shiftKey) return setRange(wholeRows(range, size));
    if (event.key === ' ' && control) return setRange(wholeColumns(range, size));
    if (event.key === 'Escape' && range.head !== range.anchor) return setRange(singleCell(range.anchor));
    if (event.altKey) return false;
    const far = Math.max(size.rows, size.columns);
    const toTheEnd = event.key === 'Home' || event.key === 'End';
    const [rows, columns] = control && toTheEnd ? corner(event.key, far) : step(event.key, control ? far : 1);
    if (rows === 0 && columns === 0) return false;
    if (event.shiftKey) {
      const moved = moveHead(range, rows, columns, size);
      view.reveal(moved.head);
      return setRange(moved);
    }
    // Single steps and pages are the grid's own.
    if (!toTheEnd && !(control && event.key.startsWith('Arrow'))) return false;
    const { head } = moveHead(singleCell(range.anchor), rows, columns, size);
    view.focus(head);
    return setRange(singleCell(head));
  }

  function cellKeys(event: KeyboardEvent, range: CellRange): boolean {
    const control = event.ctrlKey || event.metaKey;
    const key = event.key.toLowerCase();
    // With Alt held, some keyboards make another character of the letter; then its place counts.
    const letter = (name: string): boolean =>
      key === name || (event.altKey && event.code === `Key${name.toUpperCase()}`);
    if (control && !event.shiftKey && letter('d'))
      return did(target.fill('down', rectangleOf(range), event.altKey));
    if (control && !event.shiftKey && letter('r'))
      return did(target.fill('right', rectangleOf(range), event.altKey));
    if (control && event.shiftKey && letter('l'))
      return target.openFilter(view.columnAt(range.anchor.column)?.id ?? '');
    if (control || event.altKey) return false;
    if (key === 'delete' || key === 'backspace') return did(target.clear(rectangleOf(range)));
    if (key === 'enter' || key === ' ') {
      const figure = figureInFocus();
      if (figure !== undefined) return did(target.openFigure(figure));
    }
    if (key === 'enter') {
      const row = range.anchor.row + (event.shiftKey ? -1 : 1);
      if (row >= 0 && row < view.size().rows) view.focus({ ...range.anchor, row });
      return true;
    }
    return false;
  }

  function setRange(range: CellRange): boolean {
    selection.set(range);
    return true;
  }
}

/** Path of the figure that the focused cell shows. */
function figureInFocus(): string | undefined {
  return document.activeElement?.querySelector<HTMLElement>('.figure')?.dataset.figure;
}

function did(_: unknown): true {
  return true;
}

function rowCommand(event: KeyboardEvent): RowCommand | null {
  const control = event.ctrlKey || event.metaKey;
  if (control && !event.shiftKey && event.key === 'Enter') return 'insert-below';
  if (control && (event.key === 'Delete' || event.key === 'Backspace')) return 'delete';
  if (!event.altKey || control) return null;
  if (event.key === 'ArrowDown') return event.shiftKey ? 'duplicate' : 'move-down';
  if (event.key === 'ArrowUp' && !event.shiftKey) return 'move-up';
  return null;
}

/** Ctrl with Home and End: the first and the last cell of the sheet. */
function corner(key: string, far: number): readonly [rows: number, columns: number] {
  return key === 'Home' ? [-far, -far] : [far, far];
}

function step(key: string, far: number): readonly [rows: number, columns: number] {
  switch (key) {
    case 'ArrowUp':
      return [-far, 0];
    case 'ArrowDown':
      return [far, 0];
    case 'ArrowLeft':
      return [0, -far];
    case 'ArrowRight':
      return [0, far];
    case 'PageUp':
      return [-PAGE_ROWS, 0];
    case 'PageDown':
      return [PAGE_ROWS, 0];
    case 'Home':
      return [0, Number.NEGATIVE_INFINITY];
    case 'End':
      return [0, Number.POSITIVE_INFINITY];
    default:
      return [0, 0];
  }
}
