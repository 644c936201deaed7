import { taxOnLine } from '../buying/tax-on-line.ts';
import {
  COST_CATEGORIES,
  type CostCategory,
  type Order,
  type OrderLine,
  type Receipt,
} from '../project-input.ts';
import { type LineMoney, lineMoney } from './line-money.ts';
import { shareOrderPayment } from './share-order-payment.ts';

export interface OrderCharge {
  readonly name: string;
  readonly netMinor: number;
  readonly taxMinor: number;
}

/** One order in money: its lines, its charges, and what was paid for it by heading. */
export interface OrderReckoning {
  readonly order: Order;
  readonly lines: readonly LineMoney[];
  readonly charges: readonly OrderCharge[];
  /** Percent on the charges; null where none is set. */
  readonly chargeTaxPercent: number | null;
  readonly paidMinor: number;
  /** What was paid, by heading. Adds up to `paidMinor`. */
  readonly paidBy: ReadonlyMap<CostCategory, number>;
}

/**
 * What does one order come to, and how much of it is paid under which heading?
 *
 * @param lines of this order, with the receipts of each by line id
 * @param paidMinor what this project paid for it, refunds taken off
 * @param taxPercent the project's rate, for what has none of its own
 * @returns whole minor units. Delivery and surcharge are taxed each by itself and stand under "other". Where no line has a
 *   price, what was paid is shared evenly over the lines; an order without lines is paid under "other".
 *
 * Source: `lineMoney`, `shareOrderPayment`.
 */
export function reckonOrder({
  order,
  lines,
  receipts,
  paidMinor,
  taxPercent,
}: {
  readonly order: Order;
  readonly lines: readonly OrderLine[];
  readonly receipts: ReadonlyMap<string, readonly Receipt[]>;
  readonly paidMinor: number;
  readonly taxPercent: number | null;
}): OrderReckoning {
  const rate = order.taxPercent ?? taxPercent;
  const reckoned = lines.map((line) => lineMoney(line, receipts.get(line.id) ?? [], taxPercent));
  const charges = [
    { name: 'delivery', netMinor: order.deliveryMinor },
    { name: 'surcharge', netMinor: order.surchargeMinor },
  ]
    .filter(({ netMinor }) => netMinor > 0)
    .map(({ name, netMinor }) => ({
      name,
      netMinor,
      taxMinor: rate === null ? 0 : taxOnLine({ lineMinor: netMinor, taxPercent: rate }),
    }));
  return {
    order,
    lines: reckoned,
    charges,
    chargeTaxPercent: rate,
    paidMinor,
    paidBy: paidByHeading(reckoned, charges, paidMinor),
  };
}

function paidByHeading(
  lines: readonly LineMoney[],
  charges: readonly OrderCharge[],
  paidMinor: number,
): ReadonlyMap<CostCategory, number> {
  const sums = COST_CATEGORIES.map((id) => {
    const mine = lines.filter(({ line }) => line.category === id);
    const kept = mine.reduce((sum, { totalMinor }) => sum + (totalMinor ?? 0), 0);
    const returned = mine.reduce(
      (sum, { grossMinor, totalMinor }) =>
        sum + (grossMinor === null ? 0 : grossMinor - (totalMinor ?? grossMinor)),
      0,
    );
    const extra = charges.reduce((sum, { netMinor, taxMinor }) => sum + netMinor + taxMinor, 0);
    return {
      kept: id === 'other' ? kept + extra : kept,
      returned,
      lines: mine.length,
    };
  });
  const evenly = sums.map((sum, index) =>
    lines.length === 0 ? Number(COST_CATEGORIES[index] === 'other') : sum.lines,
  );
  const shares =
    shareOrderPayment(
      paidMinor,
      sums.map(({ kept }) => kept),
      sums.map(({ returned }) => returned),
    ) ??
    shareOrderPayment(
      paidMinor,
      sums.map(() => 0),
      evenly,
    ) ??
    [];
  return new Map(COST_CATEGORIES.map((id, index) => [id, shares[index] ?? 0]));
}
