import type { CostItem } from './cost-item.ts';
import { type LedgerEntries, looseName, orderName } from './ledger-entries.ts';

/**
 * What does everything cost that is ordered, or was bought without an order?
 *
 * @returns one item per order line, per charge of an order, and per payment without an order; whole minor units with tax.
 *   Together they are what the ledger has as ordered.
 *
 * Source: definition.
 */
export function orderedItems({ orders, loose }: LedgerEntries): readonly CostItem[] {
  return [
    ...orders.flatMap((order): CostItem[] => [
      ...order.lines.map(({ line, goodsMinor, totalMinor }) => ({
        name: line.name,
        category: line.category,
        productId: line.productId === '' ? null : line.productId,
        netMinor: goodsMinor,
        totalMinor,
      })),
      ...order.charges.map(
        ({ name, netMinor, taxMinor }): CostItem => ({
          name: `${name}, ${orderName(order)}`,
          category: 'other',
          productId: null,
          netMinor,
          totalMinor: netMinor + taxMinor,
        }),
      ),
    ]),
    ...loose.map(
      (entry): CostItem => ({
        name: looseName(entry),
        category: entry.payment.category,
        productId: null,
        netMinor: null,
        totalMinor: entry.ownMinor,
      }),
    ),
  ];
}
