import {
  COST_CATEGORIES,
  type CostCategory,
  type Order,
  type OrderLine,
  type Payment,
  type Receipt,
} from '../../../server/planning/project-input.ts';

/**
 * A second ledger, written from the rules alone and in whole numbers of any size: tax on each line rounded half up; sums of
 * rounded lines; what is paid for an order shared over its headings, up to what each still comes to, then by what went back.
 */

export interface SlowLedger {
  readonly ordered: ReadonlyMap<CostCategory, bigint>;
  readonly paid: ReadonlyMap<CostCategory, bigint>;
  readonly orderTotals: ReadonlyMap<string, bigint>;
}

export interface LedgerRows {
  readonly taxPercent: number | null;
  readonly orders: readonly Order[];
  readonly orderLines: readonly OrderLine[];
  readonly receipts: readonly Receipt[];
  readonly payments: readonly Payment[];
}

/** Whole number nearest to a fraction; a half goes up. */
function nearest(numerator: bigint, denominator: bigint): bigint {
  return (2n * numerator + denominator) / (2n * denominator);
}

function withTax(net: bigint, percent: number | null): bigint {
  if (percent === null) return net;
  // 8.25 % is 82500 of a million.
  return net + nearest(net * BigInt(Math.round(percent * 10_000)), 1_000_000n);
}

/** Hands a total out unit by unit, after everyone has the whole part of his due. */
function handOut(total: bigint, weights: readonly bigint[]): bigint[] | null {
  const sum = weights.reduce((one, other) => one + other, 0n);
  if (sum === 0n) return null;
  const sign = total < 0n ? -1n : 1n;
  const amount = total * sign;
  const given = weights.map((weight) => (amount * weight) / sum);
  for (let left = amount - given.reduce((one, other) => one + other, 0n); left > 0n; left--) {
    let neediest = 0;
    const lacks = (index: number): bigint => amount * (weights[index] ?? 0n) - (given[index] ?? 0n) * sum;
    for (const index of weights.keys()) if (lacks(index) > lacks(neediest)) neediest = index;
    given[neediest] = (given[neediest] ?? 0n) + 1n;
  }
  return given.map((units) => units * sign);
}

export function slowLedger({ taxPercent, orders, orderLines, receipts, payments }: LedgerRows): SlowLedger {
  const ordered = new Map(COST_CATEGORIES.map((id) => [id, 0n]));
  const paid = new Map(COST_CATEGORIES.map((id) => [id, 0n]));
  const orderTotals = new Map<string, bigint>();
  const add = (sums: Map<CostCategory, bigint>, id: CostCategory, units: bigint): void => {
    sums.set(id, (sums.get(id) ?? 0n) + units);
  };
  const borne = (payment: Payment): bigint => {
    const own = nearest(
      BigInt(payment.amountMinor) * BigInt(Math.round(payment.share * 1_000_000)),
      1_000_000n,
    );
    return payment.kind === 'refund' ? -own : own;
  };
  for (const order of orders) {
    const kept = COST_CATEGORIES.map(() => 0n);
    const back = COST_CATEGORIES.map(() => 0n);
    const lines = COST_CATEGORIES.map(() => 0n);
    for (const line of orderLines.filter(({ orderId }) => orderId === order.id)) {
      const at = COST_CATEGORIES.indexOf(line.category);
      lines[at] = (lines[at] ?? 0n) + 1n;
      const price = line.invoicedPriceMinor ?? line.unitPriceMinor;
      if (price === null) continue;
      let packs = BigInt(line.count);
      for (const receipt of receipts)
        if (receipt.orderLineId === line.id && receipt.kind === 'returned') packs -= BigInt(receipt.count);
      if (packs < 0n) packs = 0n;
      const rate = line.taxPercent ?? taxPercent;
      const now = withTax(packs * BigInt(price), rate);
      kept[at] = (kept[at] ?? 0n) + now;
      back[at] = (back[at] ?? 0n) + withTax(BigInt(line.count) * BigInt(price), rate) - now;
    }
    const other = COST_CATEGORIES.indexOf('other');
    for (const charge of [order.deliveryMinor, order.surchargeMinor])
      kept[other] = (kept[other] ?? 0n) + withTax(BigInt(charge), order.taxPercent ?? taxPercent);
    const total = kept.reduce((one, two) => one + two, 0n);
    orderTotals.set(order.id, total);
    for (const [index, id] of COST_CATEGORIES.entries()) add(ordered, id, kept[index] ?? 0n);

    const money = payments
      .filter(({ orderId }) => orderId === order.id)
      .reduce((sum, payment) => sum + borne(payment), 0n);
    const [first = 0n] = [money, total].toSorted((one, two) => (one < two ? -1 : 1));
    const gross = kept.map((units, index) => units + (back[index] ?? 0n));
    const evenly = lines.some((count) => count > 0n)
      ? lines
      : COST_CATEGORIES.map((id) => (id === 'other' ? 1n : 0n));
    const due = handOut(first, kept) ?? handOut(first, gross) ?? handOut(first, evenly) ?? [];
    const rest =
      handOut(money - first, back) ?? handOut(money - first, kept) ?? handOut(money - first, evenly) ?? [];
    for (const [index, id] of COST_CATEGORIES.entries())
      add(paid, id, (due[index] ?? 0n) + (rest[index] ?? 0n));
  }
  for (const payment of payments)
    if (!orders.some(({ id }) => id === payment.orderId)) {
      add(ordered, payment.category, borne(payment));
      add(paid, payment.category, borne(payment));
    }
  return { ordered, paid, orderTotals };
}
