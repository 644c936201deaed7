/**
 * The text a spreadsheet puts on the clipboard: lines of cells divided by tabs. A cell that holds a tab, a line
 * break or a leading quotation mark is wrapped in quotation marks, with those inside doubled.
 */

/**
 * Reads clipboard text as rows of cells. A cell counts as quoted only when its closing mark is followed by the
 * cell's end, so that inch marks (`23 5/8"`, `".714`) come through as they are.
 */
export function parseTsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at <= text.length) {
    const quoted = text[at] === '"' ? quotedCell(text, at) : null;
    const end = quoted?.end ?? plainEnd(text, at);
    row.push(quoted?.text ?? text.slice(at, end));
    if (text[end] === '\t') {
      at = end + 1;
      continue;
    }
    rows.push(row);
    row = [];
    at = end + (text.startsWith('\r\n', end) ? 2 : 1);
    // A line break at the very end closes the last line; it does not open another.
    if (at >= text.length) break;
  }
  return rows;
}

export function toTsv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => row.map(tsvCell).join('\t')).join('\r\n');
}

/** The same cells as a table, for programs that prefer one. */
export function toHtmlTable(rows: readonly (readonly string[])[]): string {
  const lines = rows.map((row) => `<tr>${row.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`);
  return `<table><tbody>${lines.join('')}</tbody></table>`;
}

function tsvCell(cell: string): string {
  return /[\t\r\n]/.test(cell) || cell.startsWith('"') ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function quotedCell(text: string, start: number): { readonly text: string; readonly end: number } | null {
  let at = start + 1;
  while (at < text.length) {
    if (text[at] !== '"') at += 1;
    else if (text[at + 1] === '"') at += 2;
    else {
      const end = at + 1;
      const closes = end === text.length || /[\t\r\n]/.test(text[end] ?? '');
      return closes ? { text: text.slice(start + 1, at).replaceAll('""', '"'), end } : null;
    }
  }
  return null;
}

function plainEnd(text: string, start: number): number {
  let end = start;
  while (end < text.length && !/[\t\r\n]/.test(text[end] ?? '')) end += 1;
  return end;
}

function escapeHtml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
