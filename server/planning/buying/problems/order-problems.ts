import { isDate } from '../../calendar/is-date.ts';
import { MOST_PRICE_MINOR } from '../../packs/constants.ts';
import { isPrice } from '../../packs/usable-price.ts';
import type { Problem } from '../../problem.ts';
import type { Order, OrderLine, Receipt } from '../../project-input.ts';
import { DOUBTFUL_FACTOR } from '../constants.ts';
import { dateText } from '../dates/date-text.ts';
import { groupedBy } from '../grouped-by.ts';
import type { PurchaseFacts } from './purchase-problems.ts';

/**
 * What is doubtful about orders and deliveries?
 *
 * @returns more sent back than came, more came than was ordered, dates the wrong way round, prices that cannot be meant, and
 *   orders that should be here
 *
 * Source: definition. Valid range: any. Departures: none.
 */
export function orderProblems({ input, today, orders }: PurchaseFacts): readonly Problem[] {
  const receiptsOf = groupedBy(input.receipts, ({ orderLineId }) => orderLineId);
  const orderOf = new Map(input.orders.map((order) => [order.id, order]));
  return [
    ...input.orderLines.flatMap((line) => [
      ...receiptProblems(line, receiptsOf.get(line.id) ?? [], orderOf.get(line.orderId), today),
      ...priceProblems(line),
    ]),
    ...orders.flatMap(({ id, overdue, expectedOn, supplierName }): Problem[] =>
      !overdue || expectedOn === null
        ? []
        : [
            {
              code: 'order-overdue',
              severity: 'warning',
              at: { table: 'orders', id, field: null },
              message: `The order from ${supplierName || 'an unnamed supplier'} should have been here on ${dateText(expectedOn)}, and not all of it is.`,
              wayOut: 'Ask the supplier, or enter what has come.',
            },
          ],
    ),
  ];
}

function receiptProblems(
  line: OrderLine,
  receipts: readonly Receipt[],
  order: Order | undefined,
  today: string,
): readonly Problem[] {
  const name = line.name || line.productId || 'without a name';
  const sum = (kind: Receipt['kind']): number =>
    receipts.filter((one) => one.kind === kind).reduce((total, { count }) => total + count, 0);
  const came = sum('received');
  const back = sum('returned');
  const lastBack = receipts.findLast(({ kind }) => kind === 'returned');
  const lastCame = receipts.findLast(({ kind }) => kind === 'received');
  const problems: Problem[] = [];
  if (back > came && lastBack !== undefined)
    problems.push({
      code: 'receipt-returned-too-many',
      severity: 'error',
      at: { table: 'receipts', id: lastBack.id, field: 'count' },
      message: `Of "${name}", ${back} packs went back but only ${came} came, so all that came count as gone.`,
      wayOut: 'Correct how many went back, or enter the delivery that is missing.',
    });
  if (came > line.count && lastCame !== undefined)
    problems.push({
      code: 'receipt-more-than-ordered',
      severity: 'warning',
      at: { table: 'receipts', id: lastCame.id, field: 'count' },
      message: `Of "${name}", ${came} packs came but only ${line.count} were ordered.`,
      wayOut: 'Correct the delivery, or the packs ordered; what goes back is entered as returned.',
    });
  for (const { id, date, kind } of receipts) {
    if (!isDate(date)) continue;
    const at = { table: 'receipts', id, field: 'date' } as const;
    const what = kind === 'received' ? 'came' : 'went back';
    if (order !== undefined && isDate(order.date) && date < order.date)
      problems.push({
        code: 'receipt-before-order',
        severity: 'warning',
        at,
        message: `"${name}" ${what} on ${dateText(date)}, before it was ordered on ${dateText(order.date)}.`,
        wayOut: 'Correct the date of the delivery or of the order.',
      });
    else if (date > today)
      problems.push({
        code: 'receipt-in-future',
        severity: 'warning',
        at,
        message: `"${name}" ${what} on ${dateText(date)}, which is yet to come, but counts as if it had.`,
        wayOut: 'Correct the date, or enter the delivery when it is here.',
      });
  }
  return problems;
}

function priceProblems(line: OrderLine): readonly Problem[] {
  const name = line.name || line.productId || 'without a name';
  const problems: Problem[] = [];
  for (const field of ['unitPriceMinor', 'invoicedPriceMinor'] as const) {
    const price = line[field];
    if (price !== null && !isPrice(price))
      problems.push({
        code: 'price-too-large',
        severity: 'error',
        at: { table: 'orderLines', id: line.id, field },
        message: `The order line "${name}" has a price of ${price} minor units for one pack, which is not a whole number from 0 to ${MOST_PRICE_MINOR} and cannot be meant.`,
        wayOut: 'Enter the price of one pack, without tax.',
      });
  }
  const { unitPriceMinor: agreed, invoicedPriceMinor: charged } = line;
  if (agreed !== null && charged !== null && agreed > 0 && charged > 0) {
    const factor = charged / agreed;
    if (factor >= DOUBTFUL_FACTOR || factor <= 1 / DOUBTFUL_FACTOR)
      problems.push({
        code: 'price-doubtful',
        severity: 'warning',
        at: { table: 'orderLines', id: line.id, field: 'invoicedPriceMinor' },
        message: `The price charged for "${name}" is ${factor >= 1 ? `${Math.round(factor)} times the agreed one` : `a ${Math.round(1 / factor)}th of the agreed one`}.`,
        wayOut: 'Look for a slip in the decimals of either price.',
      });
  }
  return problems;
}
