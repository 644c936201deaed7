import { figure } from '../figure.ts';
import type { ReckonedPayment } from './ledger-entries.ts';
import type { PaymentMoney } from './ledger-plan.ts';

/**
 * How is shown what the project bears of a payment?
 *
 * @returns whole minor units with tax, below 0 for a refund
 *
 * Source: `ownShare`; nothing is computed here.
 */
export function paymentFigure({ payment, ownMinor }: ReckonedPayment): PaymentMoney {
  const { id, kind, amountMinor, share } = payment;
  return {
    id,
    own: figure(ownMinor, 'minor', {
      rule:
        kind === 'refund'
          ? 'own = refund x share of this project, rounded half up; below 0, since it came back'
          : 'own = payment x share of this project, rounded half up',
      inputs: [
        { name: kind, value: amountMinor, unit: 'minor' },
        { name: 'share of this project', value: share, unit: 'ratio' },
      ],
    }),
  };
}
