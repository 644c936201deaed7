import { figure } from '../figure.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { OrderLine } from '../project-input.ts';
import type { BuyingLine } from './buying-plan.ts';
import type { OrderLineCounts } from './orders/order-line-counts.ts';
import type { Wanted } from './suppliers/line-offers.ts';
import { piecesToOrder } from './suppliers/pieces-to-order.ts';

/**
 * Which whole rolls, sheets or boards of a line are still to be ordered?
 *
 * @param line with the packs of its cutting plan
 * @param products its product, then those that may stand in for it, each with its order lines
 * @param takenByHand in the product's unit: whole packs of it are needed once more
 * @returns packs; null when the cutting plan is not known
 *
 * Source: `piecesToOrder`. Valid range: any. Departures: less than a whole pack taken by hand is not replaced.
 * Example: 4 sheets planned, 3 ordered, 1 spoiled: 2.
 */
export function piecesWanted({
  line,
  products,
  counts,
  takenByHand,
}: {
  readonly line: Pick<BuyLine, 'toBuy' | 'packs'>;
  readonly products: readonly { readonly product: Product; readonly orderLines: readonly OrderLine[] }[];
  readonly counts: ReadonlyMap<string, OrderLineCounts>;
  readonly takenByHand: number;
}): Extract<Wanted, { kind: 'pieces' }> | null {
  if (line.toBuy.value === null) return null;
  const own = products[0]?.product.packs ?? [];
  const planned = line.packs.flatMap(({ id, count }) => {
    const pack = own.find((one) => one.id === id);
    return pack === undefined ? [] : [{ pack, count }];
  });
  const spoiled = Math.floor(takenByHand / (planned[0]?.pack.amount ?? 1));
  const more = planned.map((one, at) => (at === 0 ? { ...one, count: one.count + spoiled } : one));
  const ordered = products.flatMap(({ product, orderLines }) =>
    orderLines.map((row) => ({
      pack: product.packs.find(({ id }) => id === row.packId) ?? null,
      amount: row.packAmount,
      count: counts.get(row.id)?.kept ?? 0,
    })),
  );
  return { kind: 'pieces', packs: piecesToOrder(more, ordered) };
}

/** What whole packs come to in the product's unit, with the working. A definition. */
export function piecesFigure(
  line: BuyLine,
  wanted: Extract<Wanted, { kind: 'pieces' }>,
): BuyingLine['toOrder'] {
  return figure(
    wanted.packs.reduce((sum, { pack, count }) => sum + pack.amount * count, 0),
    line.unit,
    {
      rule: 'to order = the whole packs of the cutting plan that are not ordered yet',
      inputs: [
        ...line.packs.map(({ label, count }) => ({
          name: `${label} in the cutting plan`,
          value: count,
          unit: 'pcs' as const,
        })),
        ...wanted.packs.map(({ pack, count }) => ({
          name: `${pack.label} still to order`,
          value: count,
          unit: 'pcs' as const,
        })),
      ],
    },
  );
}
