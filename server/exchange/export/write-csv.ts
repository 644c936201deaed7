import { fixedText, trimmedText } from '../../planning/display/fixed-text.ts';
import { defuseFormula } from './defuse-formula.ts';
import type { ExportCell, ExportColumn, ExportTable } from './export-table.ts';

/** Spreadsheets take a CSV file for UTF-8 only when it begins with this mark. */
const BYTE_ORDER_MARK = '\uFEFF';
/** RFC 4180 section 2 rule 1. */
const LINE_END = '\r\n';
/** Rule 6 wants quotes around commas, quotes and line breaks; the other separators are quoted for readers that guess. */
const NEEDS_QUOTES = /[",\r\n;|\t]|^\s|\s$/;
/** Most decimals of a number; what has fewer is written with fewer. */
const MOST_DECIMALS = 6;

/**
 * A table as CSV text: RFC 4180 (comma, CRLF, quotes doubled, one heading line), UTF-8 with a byte order mark.
 * Numbers have a point and no grouping; money has its currency's decimals; what is not known is empty.
 */
export function writeCsv({ columns, rows }: ExportTable): string {
  const lines = [
    columns.map(({ heading }) => quoted(heading)),
    ...rows.map((row) => row.map((cell, index) => field(cell, columns[index]))),
  ];
  return BYTE_ORDER_MARK + lines.map((line) => line.join(',') + LINE_END).join('');
}

function field(cell: ExportCell, column: ExportColumn | undefined): string {
  if (cell === null) return '';
  if (typeof cell === 'string') return quoted(defuseFormula(cell));
  return column?.kind === 'money' && column.decimals !== null
    ? fixedText(cell, column.decimals)
    : trimmedText(cell, MOST_DECIMALS);
}

function quoted(text: string): string {
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
