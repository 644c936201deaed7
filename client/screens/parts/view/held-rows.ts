import type { PartSheetRow } from '../part-sheet-row.ts';

/**
 * The rows in the places they had before: while an editor is open nothing moves under it. Rows that are gone leave,
 * new ones stand at the end.
 */
export function heldRows(
  before: readonly PartSheetRow[],
  next: readonly PartSheetRow[],
  lines: readonly PartSheetRow[],
): PartSheetRow[] {
  const now = new Map([...lines, ...next].map((line) => [line.key, line]));
  const held = before.flatMap(({ key }) => now.get(key) ?? []);
  const standing = new Set(held.map(({ key }) => key));
  return [...held, ...next.filter(({ key, isHeading }) => !standing.has(key) && isHeading !== true)];
}
