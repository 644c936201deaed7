import writeXlsxFile, { type Cell, type Sheet } from 'write-excel-file/node';
import type { ExportCell, ExportColumn, ExportTable } from './export-table.ts';

/**
 * Tables as an XLSX workbook, one sheet each: numbers are numbers, the heading line is bold and stays in view, columns
 * are as wide as what they usually hold. Texts are written as texts, so that none is run as a formula.
 */
export function writeWorkbook(tables: readonly ExportTable[]): Promise<Buffer> {
  return writeXlsxFile(tables.map(sheetOf)).toBuffer();
}

/** What a workbook reads as an escaped character, `_x0041_`, gets its underscore escaped: ECMA-376 part 1, 22.9.2.19. */
const ESCAPE_LIKE = /_(?=x[0-9A-Fa-f]{4}_)/g;
/** The replacement character, which the writer would leave out. */
const LEFT_OUT = /\uFFFD/g;

function sheetOf({ title, columns, rows }: ExportTable): Sheet<never> {
  return {
    sheet: title,
    stickyRowsCount: 1,
    columns: columns.map(({ width }) => ({ width })),
    data: [
      columns.map(({ heading, kind }) => ({
        value: heading,
        type: String,
        fontWeight: 'bold',
        align: kind === 'text' ? 'left' : 'right',
      })),
      ...rows.map((row) => row.map((cell, index) => cellOf(cell, columns[index]))),
    ],
  };
}

function cellOf(cell: ExportCell, column: ExportColumn | undefined): Cell {
  if (cell === null || cell === '') return null;
  if (typeof cell === 'string') return { value: escaped(cell), type: String };
  const decimals = column?.decimals ?? null;
  return decimals === null
    ? { value: cell, type: Number }
    : { value: cell, type: Number, format: decimals === 0 ? '#,##0' : `#,##0.${'0'.repeat(decimals)}` };
}

/** The writer keeps its texts in an object, where those that every object knows (`valueOf`) would be taken for known. */
function escaped(text: string): string {
  const plain = text.replace(ESCAPE_LIKE, '_x005F_').replace(LEFT_OUT, '_xFFFD_');
  if (!(plain in Object.prototype)) return plain;
  return `_x${plain.charCodeAt(0).toString(16).padStart(4, '0').toUpperCase()}_${plain.slice(1)}`;
}
