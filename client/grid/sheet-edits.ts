import { type Copy, layBlock } from './fill.ts';
import { type CellEdit, isEditable, type SheetRow } from './grid-column.ts';
import type { CellAt, Rectangle } from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import type { SheetView } from './sheet-view.ts';

export type EditKind = 'type' | 'paste' | 'fill' | 'clear' | 'cut';

export interface SheetEdits {
  paste(block: readonly (readonly string[])[], range: Rectangle): void;
  fill(copies: readonly Copy[]): void;
  clear(range: Rectangle, cut: boolean): void;
}

/** Turns what is done to a range into cell edits, each handed over as one edit of any size. Cells that are not typed are passed over. */
export function sheetEdits<Row extends SheetRow>(
  view: SheetView<Row>,
  selection: () => RangeSelection,
  newKey: () => string,
  send: (edits: readonly CellEdit[], kind: EditKind) => void,
): SheetEdits {
  function write(cells: readonly { readonly to: CellAt; readonly text: string }[], kind: EditKind): void {
    /** Rows past the end that this edit makes: row -> key. */
    const grown = new Map<number, string>();
    const edits = cells.flatMap(({ to, text }): CellEdit[] => {
      const column = view.columnAt(to.column);
      if (column === undefined || !isEditable(column)) return [];
      const shown = view.rowAt(to.row)?.key;
      const key = shown ?? grown.get(to.row) ?? newKey();
      if (shown === undefined) grown.set(to.row, key);
      return [{ key, columnId: column.id, text }];
    });
    if (edits.length > 0) send(edits, kind);
  }

  return {
    paste(block, range) {
      const cells = layBlock(block, range);
      write(cells, 'paste');
      const last = cells.at(-1)?.to;
      if (last === undefined) return;
      const column = Math.min(last.column, view.size().columns - 1);
      selection().set({ anchor: { row: range.top, column: range.left }, head: { row: last.row, column } });
    },
    fill(copies) {
      const cells = copies.flatMap(({ from, to }) => {
        const row = view.rowAt(from.row);
        const column = view.columnAt(from.column);
        if (row === undefined || column === undefined || view.rowAt(to.row)?.isBlank === true) return [];
        return [{ to, text: column.raw(row) }];
      });
      write(cells, 'fill');
    },
    clear(range, cut) {
      const cells: { to: CellAt; text: string }[] = [];
      for (let row = range.top; row <= range.bottom; row += 1)
        for (let column = range.left; column <= range.right; column += 1)
          if (view.rowAt(row)?.isBlank !== true)
            cells.push({ to: { row, column }, text: view.columnAt(column)?.cleared ?? '' });
      write(cells, cut ? 'cut' : 'clear');
    },
  };
}
