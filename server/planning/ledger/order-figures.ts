import { difference } from './difference.ts';
import type { ReckonedPayment } from './ledger-entries.ts';
import type { OrderMoney } from './ledger-plan.ts';
import type { LineMoney } from './line-money.ts';
import type { OrderReckoning } from './reckon-order.ts';
import { sumMinor } from './sum-minor.ts';

const BEFORE_TAX = 'Before tax: no tax rate is set.';
const AFTER_PAYMENT = 'Below 0: more is paid than the order comes to, so money is to come back.';

/**
 * How are the sums of one order shown?
 *
 * @param payments those for this order
 * @returns goods, charges, tax, total, paid, open and price change in whole minor units, each with its lines
 *
 * Source: `reckonOrder`; nothing is computed here but sums.
 */
export function orderFigures(order: OrderReckoning, payments: readonly ReckonedPayment[]): OrderMoney {
  const path = `ledger/orders/${order.order.id}`;
  const { lines, charges, chargeTaxPercent } = order;
  const untaxed =
    lines.some(({ taxPercent }) => taxPercent === null) || (charges.length > 0 && chargeTaxPercent === null);
  const notes = untaxed ? [BEFORE_TAX] : [];
  const goods = sumMinor(
    'goods = sum of packs kept x price of one, as charged or else as agreed, without tax',
    'lines',
    lines.map((line) => ({ name: lineName(line), value: line.goodsMinor })),
  );
  const charge = sumMinor(
    'charges = delivery + surcharge, without tax',
    'charges',
    charges.map(({ name, netMinor }) => ({ name, value: netMinor })),
  );
  const tax = sumMinor(
    'tax = sum over the lines and charges of (amount x rate, rounded half up)',
    'lines and charges',
    [
      ...lines.map((line) => ({
        name: `${line.taxPercent ?? 0} % on ${lineName(line)}`,
        value: line.taxMinor,
      })),
      ...charges.map(({ name, taxMinor }) => ({
        name: `${chargeTaxPercent ?? 0} % on ${name}`,
        value: taxMinor,
      })),
    ],
    notes,
  );
  const total = sumMinor(
    'total = goods + charges + tax',
    'amounts',
    [
      { name: 'goods', value: goods.value, from: `${path}/goods` },
      { name: 'charges', value: charge.value, from: `${path}/charges` },
      { name: 'tax', value: tax.value, from: `${path}/tax` },
    ],
    [...notes, ...unpriced(lines)],
  );
  const paid = sumMinor(
    'paid = payments for the order less refunds, as far as this project bears them',
    'payments',
    payments.map(({ payment, ownMinor }) => ({
      name: [payment.kind, payment.date, payment.receiptNumber].filter((word) => word !== '').join(' '),
      value: ownMinor,
      from: `ledger/payments/${payment.id}/own`,
    })),
  );
  return {
    id: order.order.id,
    goods,
    charges: charge,
    tax,
    total,
    paid,
    open: difference(
      'open = total - paid',
      ['total', total, `${path}/total`],
      ['paid', paid, `${path}/paid`],
      AFTER_PAYMENT,
    ),
    priceChange: sumMinor(
      'price change = what was charged less what was agreed, with tax, over the packs kept',
      'lines',
      lines
        .filter(({ line }) => line.invoicedPriceMinor !== null)
        .map((line) => ({ name: lineName(line), value: line.priceChangeMinor })),
    ),
  };
}

function lineName({ kept, returned, line }: LineMoney): string {
  const name = `${kept} x ${line.name || 'line without a name'}`;
  return returned === 0 ? name : `${name} (${returned} sent back)`;
}

function unpriced(lines: readonly LineMoney[]): readonly string[] {
  const count = lines.filter(({ totalMinor }) => totalMinor === null).length;
  return count === 0 ? [] : [`At least: ${count} of ${lines.length} lines have no known price.`];
}
