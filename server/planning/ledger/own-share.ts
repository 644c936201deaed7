import type { Payment } from '../project-input.ts';
import { MILLION } from './constants.ts';
import { fractionHalfUp } from './fraction-half-up.ts';

/**
 * What does this project bear of a payment?
 *
 * own = amount x share, rounded half up; below 0 for a refund
 *
 * @returns whole minor units with tax
 *
 * Source: common practice, no source (commercial rounding). Departure: each project that bears a share rounds by itself, so
 *   two halves of an odd amount are a unit more than the whole.
 * Example: a third, entered as 0.3333, of 100.00 is 33.33; all of a refund of 5.00 is -5.00.
 */
export function ownShare({ kind, amountMinor, share }: Payment): number {
  const own = fractionHalfUp(amountMinor, Math.round(share * MILLION), MILLION);
  return kind === 'refund' && own !== 0 ? -own : own;
}
