import { parseTsv, toHtmlTable, toTsv } from './clipboard.ts';
import type { SheetColumn, SheetRow } from './grid-column.ts';
import { type Rectangle, rectangleOf } from './range-model.ts';
import type { RangeSelection } from './range-selection.ts';
import { isInEditor, type SheetView } from './sheet-view.ts';

/** Between windows of this program cells travel as they are held (an expression, a product), not as they look. */
const HELD_CELLS = 'application/x-sheet-cells';

export interface ClipboardTarget {
  paste(block: readonly (readonly string[])[], range: Rectangle): void;
  clear(range: Rectangle, cut: boolean): void;
}

/** Copy, cut and paste through the browser's own clipboard events, which need no permission. */
export function clipboardEvents<Row extends SheetRow>(
  host: HTMLElement,
  view: SheetView<Row>,
  selection: RangeSelection,
  target: ClipboardTarget,
): void {
  host.addEventListener('copy', (event) => copy(event));
  host.addEventListener('cut', (event) => {
    const range = copy(event);
    if (range !== null) target.clear(range, true);
  });
  host.addEventListener('paste', (event) => {
    const range = selection.get();
    if (isInEditor(event.target) || range === null || event.clipboardData === null) return;
    event.preventDefault();
    const plain = event.clipboardData.getData('text/plain');
    const block = heldBlock(event.clipboardData.getData(HELD_CELLS)) ?? parseTsv(plain);
    if (plain !== '' || block.length > 1) target.paste(block, rectangleOf(range));
  });

  function copy(event: ClipboardEvent): Rectangle | null {
    const range = selection.get();
    if (isInEditor(event.target) || range === null || event.clipboardData === null) return null;
    event.preventDefault();
    const rectangle = rectangleOf(range);
    const shown = cells((row, column) => column.copyText?.(row) ?? column.view(row).text);
    event.clipboardData.setData('text/plain', toTsv(shown));
    event.clipboardData.setData('text/html', toHtmlTable(shown));
    event.clipboardData.setData(HELD_CELLS, JSON.stringify(cells((row, column) => column.raw(row))));
    return rectangle;

    function cells(read: (row: Row, column: SheetColumn<Row>) => string): string[][] {
      const rows: string[][] = [];
      for (let index = rectangle.top; index <= rectangle.bottom; index += 1) {
        const row = view.rowAt(index);
        // Headings are not content, nor is the row that waits at the end for a new entry.
        if (row === undefined || row.isHeading || (row.isBlank === true && index > rectangle.top)) continue;
        const line: string[] = [];
        for (let at = rectangle.left; at <= rectangle.right; at += 1) {
          const column = view.columnAt(at);
          if (column !== undefined) line.push(read(row, column));
        }
        rows.push(line);
      }
      return rows;
    }
  }
}

function heldBlock(text: string): string[][] | null {
  if (text === '') return null;
  const block: unknown = JSON.parse(text);
  return Array.isArray(block) ? (block as string[][]) : null;
}
