import type { Change, OnHandRow } from '../../../server/http/contract.ts';
import type { Offcut } from './offcuts.ts';

const MM_PER_M = 1000;
/** Sizes within this are one, mm. Ours. */
const SAME_MM = 0.01;

/**
 * The one change that puts an offcut among what is on hand: one more of a piece that is there already, or a new row.
 * An offcut of a board is as wide as its board, which the catalogue knows; its amount is its length in metres.
 */
export function keepOffcut(
  productId: string,
  kind: 'sheet' | 'board',
  { lengthMm, widthMm, count }: Offcut,
  onHand: readonly OnHandRow[],
): Change {
  const metres = lengthMm / MM_PER_M;
  const known = onHand.find((row) =>
    row.productId !== productId
      ? false
      : kind === 'sheet'
        ? near(row.lengthMm, lengthMm) && near(row.widthMm, widthMm)
        : near(row.amount * MM_PER_M, lengthMm),
  );
  if (known !== undefined)
    return { op: 'update', table: 'onHand', id: known.id, values: { count: known.count + count } };
  const values =
    kind === 'sheet'
      ? { productId, amount: 1, count, lengthMm, widthMm }
      : { productId, amount: metres, count, lengthMm: null, widthMm: null };
  return { op: 'insert', table: 'onHand', values };
}

function near(mm: number | null, other: number): boolean {
  return mm !== null && Math.abs(mm - other) < SAME_MM;
}
