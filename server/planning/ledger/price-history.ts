import type { BuyLine } from '../plan-output.ts';
import type { ProjectInput } from '../project-input.ts';
import { groupRows } from './group-rows.ts';
import type { PriceHistory, PricePoint } from './ledger-plan.ts';

/**
 * What has each product cost, and what does it cost now?
 *
 * @param lines of the buy list
 * @returns per product that is ordered or to be bought: the catalogue's prices in the project's currency, the prices agreed
 *   and the prices charged, in order of date; without tax, whole minor units for one pack. A product without any price is
 *   left out. An agreed or charged price bears the date of its order.
 *
 * Source: definition.
 */
export function priceHistory(
  { settings, catalogue, orders, orderLines }: ProjectInput,
  lines: readonly BuyLine[],
): readonly PriceHistory[] {
  const orderOf = new Map(orders.map((order) => [order.id, order]));
  const ordered = groupRows(orderLines, ({ productId }) => productId);
  const bought = new Set(lines.map(({ productId }) => productId));
  return catalogue.products
    .filter(({ id }) => ordered.has(id) || bought.has(id))
    .map(({ id, packs }) => {
      const known = packs.flatMap((pack): PricePoint[] =>
        pack.priceMinor === null || pack.currency !== settings.currency
          ? []
          : [
              {
                kind: 'catalogue',
                date: pack.readOn,
                supplierId: pack.supplierId ?? '',
                packId: pack.id,
                packAmount: pack.amount,
                priceMinor: pack.priceMinor,
              },
            ],
      );
      const paid = (ordered.get(id) ?? []).flatMap((line): PricePoint[] => {
        const order = orderOf.get(line.orderId);
        const point = {
          date: order === undefined || order.date === '' ? null : order.date,
          supplierId: order?.supplierId ?? '',
          packId: line.packId,
          packAmount: line.packAmount,
        };
        const prices = [
          { kind: 'agreed', priceMinor: line.unitPriceMinor },
          { kind: 'charged', priceMinor: line.invoicedPriceMinor },
        ] as const;
        return prices.flatMap(({ kind, priceMinor }) =>
          priceMinor === null ? [] : [{ ...point, kind, priceMinor }],
        );
      });
      const points = [...known, ...paid].toSorted(byDate);
      return { id, points };
    })
    .filter(({ points }) => points.length > 0);
}

/** Without a date first; of the same day in the order given. */
function byDate({ date: one }: PricePoint, { date: other }: PricePoint): number {
  return (one ?? '') < (other ?? '') ? -1 : Number((one ?? '') > (other ?? ''));
}
