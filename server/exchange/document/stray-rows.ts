import type { Problem } from '../../planning/problem.ts';
import { documentProblem } from './document-problem.ts';
import type { NumberedDocument } from './number-document.ts';

/** The order lines and deliveries of a document that belong to nothing it has. */
export function strayRows({ orders, orderLines, receipts }: NumberedDocument): readonly Problem[] {
  const orderIds = new Set(orders.map(({ id }) => id));
  const lineIds = new Set(orderLines.map(({ id }) => id));
  return [
    ...orderLines.flatMap(({ id, orderId }) =>
      orderIds.has(String(orderId))
        ? []
        : [
            documentProblem(
              { table: 'orderLines', id, field: 'orderId' },
              `Order line "${id}" belongs to the order "${orderId}", which the document does not have.`,
              'Name the id of one of its orders.',
            ),
          ],
    ),
    ...receipts.flatMap(({ id, orderLineId }) =>
      lineIds.has(String(orderLineId))
        ? []
        : [
            documentProblem(
              { table: 'receipts', id, field: 'orderLineId' },
              `Delivery "${id}" belongs to the order line "${orderLineId}", which the document does not have.`,
              'Name the id of one of its order lines.',
            ),
          ],
    ),
  ];
}
