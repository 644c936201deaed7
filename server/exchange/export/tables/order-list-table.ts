import type { BuyingPlan, OrderLineState } from '../../../planning/buying/buying-plan.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';

interface Row {
  readonly supplier: string;
  readonly state: string;
  readonly date: string;
  readonly order: string;
  readonly item: string;
  readonly category: string;
  readonly pack: string;
  readonly packs: number | null;
  readonly priceMinor: number | null;
  readonly chargedMinor: number | null;
  readonly costMinor: number | null;
  readonly received: number | null;
  readonly returned: number | null;
  readonly open: number | null;
}

/**
 * What is still to be ordered and what is ordered, one line per pack. The date is the last day to order for the first, the
 * day of the order for the others; costs are without tax, of the packs ordered and not sent back.
 */
export function orderListTable(input: ProjectInput, buying: BuyingPlan): ExportTable {
  const { text, count, money } = columnMakers(input.settings);
  return exportTable<Row>(
    'order-list',
    'Order list',
    [
      text('Supplier', 24, ({ supplier }) => supplier),
      text('State', 14, ({ state }) => state),
      text('Order by, or ordered on', 22, ({ date }) => date),
      text('Order', 16, ({ order }) => order),
      text('Item', 36, ({ item }) => item),
      text('Category', 14, ({ category }) => category),
      text('Pack', 18, ({ pack }) => pack),
      count('Packs', ({ packs }) => packs),
      money('Price of one', ({ priceMinor }) => priceMinor),
      money('Charged for one', ({ chargedMinor }) => chargedMinor),
      money('Cost', ({ costMinor }) => costMinor),
      count('Received', ({ received }) => received),
      count('Sent back', ({ returned }) => returned),
      count('To come', ({ open }) => open),
    ],
    [...toOrder(buying), ...ordered(input, buying)],
  );
}

function toOrder({ lines }: BuyingPlan): readonly Row[] {
  return lines.flatMap((line) =>
    line.packs
      .filter((pack) => pack.count > 0)
      .map((pack) => ({
        supplier: line.supplierName,
        state: 'to order',
        date: line.orderBy ?? '',
        order: '',
        item: line.name,
        category: line.category,
        pack: pack.label,
        packs: pack.count,
        priceMinor: pack.priceMinor,
        chargedMinor: null,
        costMinor: pack.lineMinor,
        received: null,
        returned: null,
        open: null,
      })),
  );
}

function ordered({ orders, orderLines, catalogue }: ProjectInput, buying: BuyingPlan): readonly Row[] {
  const states = new Map(buying.orders.map((order) => [order.id, order]));
  const labels = new Map(
    catalogue.products.flatMap(({ packs }) => packs.map(({ id, label }) => [id, label] as const)),
  );
  return orders.flatMap((order) => {
    const state = states.get(order.id);
    return orderLines
      .filter(({ orderId }) => orderId === order.id)
      .map((line) => {
        const counts = state?.lines.find(({ id }) => id === line.id);
        const price = line.invoicedPriceMinor ?? line.unitPriceMinor;
        const kept = Math.max(0, line.count - (counts?.returned ?? 0));
        return {
          supplier: state?.supplierName ?? order.supplierId,
          state: lineState(counts),
          date: order.date,
          order: order.number || order.id,
          item: line.name,
          category: line.category,
          pack: labels.get(line.packId) ?? '',
          packs: line.count,
          priceMinor: line.unitPriceMinor,
          chargedMinor: line.invoicedPriceMinor,
          costMinor: price === null ? null : kept * price,
          received: counts?.received ?? null,
          returned: counts?.returned ?? null,
          open: counts?.open ?? null,
        };
      });
  });
}

function lineState(counts: OrderLineState | undefined): string {
  if (counts === undefined || counts.received === 0) return 'ordered';
  return counts.open > 0 ? 'part received' : 'received';
}
