import type { Product } from '../../product.ts';
import type { OnHand } from '../../project-input.ts';
import { goodUntil } from './good-until.ts';

/**
 * Which leftovers are past their date?
 *
 * @param onHand rows of what is on hand
 * @param products of the catalogue
 * @param today YYYY-MM-DD
 * @returns ids of the rows that were good until a day before today; one whose date is not known is never among them
 *
 * Source: `goodUntil`. Valid range: any. Departures: none. Example: good until today: not expired.
 */
export function expiredOnHand(
  onHand: readonly OnHand[],
  products: readonly Product[],
  today: string,
): ReadonlySet<string> {
  const dated = onHand.filter(({ bestBefore = '', openedOn = '' }) => bestBefore !== '' || openedOn !== '');
  if (dated.length === 0) return new Set();
  const byId = new Map(products.map((product) => [product.id, product]));
  return new Set(
    dated
      .filter((row) => {
        const last = goodUntil(row, byId.get(row.productId));
        return last !== null && last < today;
      })
      .map(({ id }) => id),
  );
}
