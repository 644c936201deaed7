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
 * Moves a block of rows past another row, which is one move: the passed row goes to the block's other side. Empty
 * when there is nothing to pass.
 */
export function moveParts(
  parts: readonly PartRow[],
  block: readonly PartRow[],
  passed: PartRow | undefined,
  direction: 'up' | 'down',
): Change[] {
  const last = block.at(-1);
  if (passed === undefined || last === undefined) return [];
  const before = direction === 'up' ? parts[parts.indexOf(last) + 1] : block[0];
  return [{ op: 'move', table: 'parts', id: passed.id, before: before?.id ?? null }];
}
