import { type Fill, fillDown, fillRight, fillTo, layBlock } from './fill.ts';
import { type FillHow, fillTexts } from './fill-texts.ts';
import { type CellEdit, isEditable, type SheetRow } from './grid-column.ts';
import type { CellAt, Rectangle } from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import type { SheetView } from './sheet-view.ts';

export type EditKind = 'type' | 'paste' | 'fill' | 'clear' | 'cut';

/** Ranges and cells are given as the sheet shows them; headings among the rows are passed over. */
export interface SheetEdits {
  paste(block: readonly (readonly string[])[], range: Rectangle): void;
  /** The same text in every cell of the range. */
  enter(text: string, range: Rectangle): void;
  /** Ctrl+D and Ctrl+R; `alone` as in FillHow. */
  fill(way: 'down' | 'right', range: Rectangle, alone: boolean): void;
  /** The cells that a fill from the range to a cell would write; null while the cell is inside the range. */
  fillTarget(range: Rectangle, pointer: CellAt): Rectangle | null;
  fillTo(range: Rectangle, pointer: CellAt, alone: boolean): void;
  clear(range: Rectangle, cut: boolean): void;
}

interface CellText {
  readonly to: CellAt;
  readonly text: string;
}

/** Turns what is done to a range into cell edits, each handed over as one edit of any size. Cells that are not typed are passed over. */
export function sheetEdits<Row extends SheetRow>(
  view: SheetView<Row>,
  selection: () => RangeSelection,
  newKey: () => string,
  send: (edits: readonly CellEdit[], kind: EditKind) => void,
): SheetEdits {
  const rowOf = (cell: CellAt): Row | undefined => view.rowAt(view.content().shownAt(cell.row));

  /** `cells` count content rows. */
  function write(cells: readonly CellText[], kind: EditKind): void {
    const { shownAt } = view.content();
    /** Rows past the end that this edit makes: row -> key. */
    const grown = new Map<number, string>();
    const edits = cells.flatMap(({ to, text }): CellEdit[] => {
      const column = view.columnAt(to.column);
      if (column === undefined || !isEditable(column)) return [];
      const shown = view.rowAt(shownAt(to.row))?.key;
      const key = shown ?? grown.get(to.row) ?? newKey();
      if (shown === undefined) grown.set(to.row, key);
      return [{ key, columnId: column.id, text }];
    });
    if (edits.length > 0) send(edits, kind);
  }

  function writeFill(fill: Fill | null, how: FillHow): void {
    if (fill === null) return;
    const texts = fillTexts(
      fill,
      (cell) => {
        const row = rowOf(cell);
        const column = view.columnAt(cell.column);
        if (row === undefined || column === undefined) return null;
        const held = column.raw(row);
        return { held, typed: column.editText?.(row) ?? held, counts: column.choices === undefined };
      },
      how,
    );
    // The line that waits for a new part is not filled.
    write(
      texts.filter(({ to }) => rowOf(to)?.isBlank !== true),
      'fill',
    );
  }

  function fillOf(range: Rectangle, pointer: CellAt): Fill | null {
    const rows = view.content();
    const own = rows.within(range);
    if (own === null) return null;
    const side = pointer.row > range.bottom ? 'before' : 'after';
    const row =
      pointer.row > range.bottom || pointer.row < range.top ? rows.nearest(pointer.row, side) : own.top;
    return fillTo(own, { ...pointer, row });
  }

  return {
    paste(block, range) {
      const rows = view.content();
      const own = rows.within(range);
      if (own === null) return;
      const cells = layBlock(block, own);
      write(cells, 'paste');
      const last = cells.at(-1)?.to;
      if (last === undefined) return;
      const column = Math.min(last.column, view.size().columns - 1);
      selection().set({
        anchor: { row: rows.shownAt(own.top), column: range.left },
        head: { row: rows.shownAt(last.row), column },
      });
    },
    enter(text, range) {
      const own = view.content().within(range);
      if (own === null) return;
      const several = own.bottom > own.top;
      write(
        cellsOf(own).flatMap((to) => (several && rowOf(to)?.isBlank === true ? [] : [{ to, text }])),
        'fill',
      );
    },
    fill(way, range, alone) {
      const own = view.content().within(range);
      if (own !== null) writeFill(way === 'down' ? fillDown(own) : fillRight(own), { alone, grows: true });
    },
    fillTarget(range, pointer) {
      const fill = fillOf(range, pointer);
      return fill === null ? null : view.content().shown(fill.target);
    },
    fillTo(range, pointer, alone) {
      writeFill(fillOf(range, pointer), { alone, grows: false });
    },
    clear(range, cut) {
      const own = view.content().within(range);
      if (own === null) return;
      const cells = cellsOf(own).flatMap((to) =>
        rowOf(to)?.isBlank === true ? [] : [{ to, text: view.columnAt(to.column)?.cleared ?? '' }],
      );
      write(cells, cut ? 'cut' : 'clear');
    },
  };
}

function cellsOf({ top, left, bottom, right }: Rectangle): CellAt[] {
  const cells: CellAt[] = [];
  for (let row = top; row <= bottom; row += 1)
    for (let column = left; column <= right; column += 1) cells.push({ row, column });
  return cells;
}
