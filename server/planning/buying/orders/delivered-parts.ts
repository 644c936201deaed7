import { isDate } from '../../calendar/is-date.ts';
import { readFigure } from '../../finish/read-figure.ts';
import type { Product } from '../../product.ts';
import type { OrderLine, Receipt } from '../../project-input.ts';
import { groupedBy } from '../grouped-by.ts';
import { afterMonths } from '../stock/after-months.ts';
import type { StockPart } from '../stock/take-from-stock.ts';

export interface DeliveredPart extends StockPart {
  readonly productId: string;
  readonly place: string;
  readonly batch: string;
}

/**
 * Which deliveries are in the shop, less what was sent back of them?
 *
 * @param products of the catalogue by id, for the shelf life of unopened packs, months
 * @returns one part per delivery, in the product's unit. What went back is taken off the deliveries of the same batch
 *   first, the latest first.
 *
 * Source: definition; the last good day is that of delivery plus the catalogue's unopened shelf life. Valid range: any.
 * Departures: a pack may have lain at the supplier's; its own date is then earlier.
 * Example: 3 cans of 0.946 L came and 1 went back: 1.892 L.
 */
export function deliveredParts(
  orderLines: readonly OrderLine[],
  receipts: readonly Receipt[],
  products: ReadonlyMap<string, Product>,
): readonly DeliveredPart[] {
  const byLine = groupedBy(receipts, ({ orderLineId }) => orderLineId);
  return orderLines.flatMap((line) => {
    const own = byLine.get(line.id) ?? [];
    const came = own
      .filter(({ kind }) => kind === 'received')
      .map((row) => ({ row, left: packs(row.count) }));
    for (const back of own.filter(({ kind }) => kind === 'returned')) {
      let open = packs(back.count);
      const order = came.toSorted(
        (one, other) =>
          Number(other.row.batch === back.batch) - Number(one.row.batch === back.batch) ||
          (one.row.date < other.row.date ? 1 : -1),
      );
      for (const part of order) {
        const share = Math.min(open, part.left);
        part.left -= share;
        open -= share;
      }
    }
    const product = products.get(line.productId);
    return came.flatMap(({ row, left }): DeliveredPart[] =>
      left === 0
        ? []
        : [
            {
              from: 'receipts',
              id: row.id,
              productId: line.productId,
              amount: left * line.packAmount,
              arrivedOn: row.date,
              opened: false,
              goodUntil: goodFrom(row.date, product),
              place: row.place,
              batch: row.batch,
            },
          ],
    );
  });
}

function goodFrom(date: string, product: Product | undefined): string | null {
  if (!isDate(date) || product === undefined) return null;
  const { value } = readFigure(product, 'shelfLifeUnopened');
  return value === null ? null : afterMonths(date, value);
}

function packs(count: number): number {
  return Number.isFinite(count) ? Math.max(0, Math.floor(count)) : 0;
}
