import type { Change, PartRow, RowValues } from '../../../server/http/contract.ts';

/** The changes that whole-row commands ask for. Each list is one request and one undo step. */

/** A new part in front of `before` (at the end when null) that carries on what usually stays the same from row to row. */
export function insertPart(tempId: string, above: PartRow | null, before: string | null): Change[] {
  return [{ op: 'insert', table: 'parts', tempId, before, values: carriedOn(above) }];
}

export function carriedOn(above: PartRow | null): RowValues {
  if (above === null) return { quantity: '1' };
  const { section, materialId, showRecipeId, backRecipeId } = above;
  return { quantity: '1', section, materialId, showRecipeId, backRecipeId };
}

/** Copies of a block of rows, placed below it. */
export function duplicateParts(
  block: readonly PartRow[],
  below: PartRow | null,
  tempIds: readonly string[],
): Change[] {
  return block.map((part, index) => {
    const { id: _id, position: _position, ...values } = part;
    return { op: 'insert', table: 'parts', tempId: tempIds[index] ?? '', before: below?.id ?? null, values };
  });
}

export function deleteParts(block: readonly PartRow[]): Change[] {
  return block.map(({ id }) => ({ op: 'delete', table: 'parts', id }));
}

/**
 * Moves a block of neighbouring rows one place up or down, which is one move: the row it passes goes to the block's
 * other side. Empty when the block stands at that end already.
 */
export function moveParts(
  parts: readonly PartRow[],
  block: readonly PartRow[],
  direction: 'up' | 'down',
): Change[] {
  const first = parts.findIndex(({ id }) => id === block[0]?.id);
  const last = first + block.length - 1;
  const passed = direction === 'up' ? parts[first - 1] : parts[last + 1];
  if (first < 0 || passed === undefined) return [];
  const before = direction === 'up' ? parts[last + 1] : parts[first];
  return [{ op: 'move', table: 'parts', id: passed.id, before: before?.id ?? null }];
}
