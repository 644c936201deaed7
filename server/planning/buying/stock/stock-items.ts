import { figure } from '../../figure.ts';
import type { Product } from '../../product.ts';
import type { StockItem } from '../buying-plan.ts';
import type { CoatUse } from './coat-uses.ts';
import type { ProductStock } from './product-stock.ts';

/**
 * What is in the shop of each product, as it is shown: with where it stands, and the working of what is left.
 *
 * @returns in the order of the catalogue; products that never were there are left out. Amounts in the product's unit.
 *
 * Source: `productStocks`; nothing is computed here but sums. Valid range: any. Departures: none.
 */
export function stockItems(
  products: readonly Product[],
  stocks: ReadonlyMap<string, ProductStock>,
  uses: readonly CoatUse[],
): readonly StockItem[] {
  return products.flatMap(({ id, name, unit }): StockItem[] => {
    const stock = stocks.get(id);
    if (stock === undefined) return [];
    const own = uses.filter(({ productId }) => productId === id);
    const byCoats = own.reduce((sum, { used }) => sum + used, 0);
    const pieces = (from: string, expired: boolean) =>
      stock.pieces
        .filter((piece) => piece.from === from && piece.expired === expired)
        .map((piece) => ({
          name:
            [piece.place, piece.batch && `batch ${piece.batch}`].filter(Boolean).join(', ') || 'a leftover',
          value: piece.amount,
          unit,
        }));
    return [
      {
        id,
        name,
        unit,
        leftovers: figure(stock.leftovers, unit, {
          rule: 'leftovers = what is still good + what was used of them',
          inputs: [
            ...pieces('onHand', false),
            {
              name: 'used of leftovers',
              value: stock.leftovers - pieces('onHand', false).reduce((sum, { value }) => sum + value, 0),
              unit,
            },
          ],
        }),
        expired: figure(stock.expired, unit, {
          rule: 'past its date = what is left of cans whose last good day is over',
          inputs: [...pieces('onHand', true), ...pieces('receipts', true)],
          notes: ['Not counted anywhere. Correct the date of the can if it is still good.'],
        }),
        received: figure(stock.received, unit, {
          rule: 'received = deliveries less what was sent back',
          inputs: [],
        }),
        used: figure(stock.used, unit, {
          rule: 'used = taken by finished coats + taken by hand',
          inputs: [
            { name: `finished coats (${own.length})`, value: byCoats, unit },
            { name: 'by hand', value: stock.usedByHand, unit },
          ],
        }),
        now: figure(stock.now, unit, {
          rule: 'now = leftovers + received - used, less what is past its date',
          inputs: [
            { name: 'leftovers', value: stock.leftovers, unit, from: `buying/stock/${id}/leftovers` },
            { name: 'received', value: stock.received, unit, from: `buying/stock/${id}/received` },
            { name: 'used', value: stock.used, unit, from: `buying/stock/${id}/used` },
            { name: 'delivered and past its date', value: stock.expiredDelivered, unit },
          ],
          ...(stock.beyond === 0
            ? {}
            : {
                notes: [
                  `${stock.beyond.toFixed(2)} ${unit} more was used than was ever entered here, so some of the stock is missing from the list.`,
                ],
              }),
        }),
        pieces: stock.pieces,
      },
    ];
  });
}
