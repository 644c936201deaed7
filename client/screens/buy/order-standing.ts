import type { OrderLineRow, ProjectRows } from '../../../server/http/contract.ts';

/** How far an order line has come: packs ordered, packs here, packs still to come. */
export interface LineStanding {
  readonly ordered: number;
  readonly here: number;
  readonly toCome: number;
}

export type Standing = 'ordered' | 'part received' | 'received';

/** What came less what was sent back; a pack sent back is not expected again. */
export function lineStanding({ receipts }: ProjectRows, line: OrderLineRow): LineStanding {
  let came = 0;
  let back = 0;
  for (const receipt of receipts) {
    if (receipt.orderLineId !== line.id) continue;
    if (receipt.kind === 'returned') back += receipt.count;
    else came += receipt.count;
  }
  return { ordered: line.count, here: came - back, toCome: Math.max(0, line.count - came) };
}

export function standingOf(lines: readonly LineStanding[]): Standing {
  if (lines.every(({ toCome }) => toCome === 0)) return 'received';
  return lines.some(({ toCome, ordered }) => toCome < ordered) ? 'part received' : 'ordered';
}
