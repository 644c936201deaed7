import { formatMoney } from '../../display/format-money.ts';
import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import { ledgerProblem } from './ledger-problem.ts';

/**
 * What is doubtful about the payments?
 *
 * @returns payments for an order that is not there, and with more tax than amount
 *
 * Source: definition.
 */
export function paymentProblems({ settings, orders, payments }: ProjectInput): readonly Problem[] {
  const known = new Set(orders.map(({ id }) => id));
  return payments.flatMap(({ id, orderId, amountMinor, taxMinor }) => [
    ...(orderId === '' || known.has(orderId)
      ? []
      : [
          ledgerProblem(
            'payment-order-unknown',
            'warning',
            ['payments', id, 'orderId'],
            'This payment is for an order that the project does not have, so it counts as bought without one.',
            'Choose the order, or none.',
          ),
        ]),
    ...(taxMinor !== null && taxMinor > amountMinor
      ? [
          ledgerProblem(
            'payment-tax-too-large',
            'warning',
            ['payments', id, 'taxMinor'],
            `The tax in this payment, ${formatMoney(taxMinor, settings.currency)}, is more than the payment, ${formatMoney(amountMinor, settings.currency)}.`,
            'Enter the tax that is contained in the amount.',
          ),
        ]
      : []),
  ]);
}
