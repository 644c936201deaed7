import { figure } from '../figure.ts';
import { roundHalfUp } from '../ledger/round-half-up.ts';
import { isPrice } from '../packs/usable-price.ts';
import type { BuyLine } from '../plan-output.ts';
import type { ProjectInput } from '../project-input.ts';
import type { OrderPack } from './buying-plan.ts';
import { orderedAmounts } from './line-amounts.ts';
import type { OrderLineCounts } from './orders/order-line-counts.ts';
import type { OpenLine } from './placed-line.ts';

/**
 * What is still to be ordered of a line added by hand that is not in the catalogue?
 *
 * Its orders are the order lines without a product whose pack is the line's id (`extra-7`), or else whose name is the line's.
 *
 * @returns the line in pieces; packs of one piece where the quantity is whole, else one pack of all of it, in whole minor units
 *
 * Source: definition; rounding half up, as in `extraLine`. Valid range: any. Departures: none.
 * Example: 20 hinges, 12 ordered: 8 to order.
 */
export function extraPurchase(
  line: BuyLine,
  { extras, orderLines }: ProjectInput,
  counts: ReadonlyMap<string, OrderLineCounts>,
): OpenLine {
  const extra = extras.find(({ id }) => `extra-${id}` === line.id);
  const own = orderLines.filter(
    ({ productId, packId, name }) =>
      productId === '' && (packId === '' ? sameName(name, line.name) : packId === line.id),
  );
  const ordered = orderedAmounts(own, counts);
  const need = line.need.value;
  const toOrder = need === null ? null : Math.max(0, need - ordered.kept);
  const price = extra?.unitPriceMinor ?? null;
  const each = price !== null && isPrice(price) ? price : null;
  const unit = line.unit;
  const pieces = (rule: string, value: number | null, inputs: readonly [string, number | null][] = []) =>
    figure(value, unit, { rule, inputs: inputs.map(([name, of]) => ({ name, value: of, unit })) });
  return {
    line,
    product: null,
    amounts: {
      need: line.need,
      onHand: line.onHand,
      ordered: pieces('ordered = pieces ordered and not sent back', ordered.kept),
      received: pieces('received = pieces that came and were not sent back', ordered.here),
      toOrder: pieces('to order = quantity - ordered, not below 0', toOrder, [
        ['quantity', need],
        ['ordered', ordered.kept],
      ]),
      open: ordered.open,
      surplus: 0,
      notes: [],
    },
    offers: [],
    extraPacks: toOrder === null || toOrder === 0 ? [] : [packOf(line, toOrder, each)],
  };
}

function packOf(line: BuyLine, toOrder: number, each: number | null): OrderPack {
  const whole = Number.isInteger(toOrder);
  const lineMinor = each === null ? null : roundHalfUp(toOrder * each);
  return {
    packId: line.id,
    productId: null,
    label: whole ? 'piece' : `${toOrder} pieces`,
    amount: whole ? 1 : toOrder,
    count: whole ? toOrder : 1,
    priceMinor: whole ? each : lineMinor,
    lineMinor,
  };
}

function sameName(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}
