import type { Change, PartRow } from '../../../server/http/contract.ts';
import type { RowGap } from '../../grid/drag-rows.ts';

/**
 * Puts a block of parts into the gap where the mouse has let them go, as one edit. `above` and `below` are the ids of the
 * gap's neighbours as shown; a list that is filtered hides others between them, and the block follows the one above.
 * Empty when nothing would move.
 */
export function dropParts(
  parts: readonly PartRow[],
  block: readonly PartRow[],
  { above, below }: RowGap,
): Change[] {
  const moved = new Set(block.map(({ id }) => id));
  const rest = parts.filter(({ id }) => !moved.has(id));
  const after = rest.findIndex(({ id }) => id === above);
  const before = after >= 0 ? rest[after + 1] : rest.find(({ id }) => id === below);
  const at = before === undefined ? rest.length : rest.indexOf(before);
  const wanted = [...rest.slice(0, at), ...block, ...rest.slice(at)];
  if (wanted.every((part, index) => part === parts[index])) return [];
  return block.map(({ id }) => ({ op: 'move', table: 'parts', id, before: before?.id ?? null }));
}
