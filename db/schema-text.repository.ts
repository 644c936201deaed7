import type { Database } from 'better-sqlite3';

interface SchemaRow {
  readonly sql: string;
}

/**
 * The layout of an open database as text: every table and index in order of name, one column to a line and white
 * space evened out, so that two files can be compared however their layouts came about.
 */
export function schemaText(db: Database): string {
  const rows = db
    .prepare(
      `SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY tbl_name, type DESC, name`,
    )
    .all() as SchemaRow[];
  return rows.map((row) => `${oneColumnToALine(row.sql)};\n`).join('\n');
}

function oneColumnToALine(sql: string): string {
  const even = sql.replace(/\s+/g, ' ').replace(/\( /g, '(').replace(/ \)/g, ')').replace(/ ?, ?/g, ', ');
  if (!even.startsWith('CREATE TABLE')) return even;
  let depth = 0;
  let text = '';
  for (const character of even) {
    if (character === '(') depth++;
    if (character === ')') depth--;
    if (character === ')' && depth === 0) text += '\n';
    text += character;
    if (character === '(' && depth === 1) text += '\n  ';
    if (character === ',' && depth === 1) text += '\n ';
  }
  return text;
}
