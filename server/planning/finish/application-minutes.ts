import type { ApplicationMethod } from '../project-input.ts';
import { APPLICATION_RATE_M2_PER_MIN } from './constants.ts';
import { requireNumber } from './require-number.ts';

/**
 * How long does it take to lay one coat, without setting up and cleaning?
 *
 * @param areaM2 area to coat, m2, 0 or more
 * @param method how it is laid on
 * @returns minutes for one pair of hands
 *
 * Source: the rates in `constants.ts` are common practice, no source. Valid for furniture parts laid out within
 * reach. Departures: none.
 * Example: 3 m2 by brush at 0.15 m2/min: 20 min.
 */
export function applicationMinutes({
  areaM2,
  method,
}: {
  readonly areaM2: number;
  readonly method: ApplicationMethod;
}): number {
  requireNumber('applicationMinutes: areaM2', areaM2, { atLeast: 0 }, 'm2');
  return areaM2 / APPLICATION_RATE_M2_PER_MIN[method];
}
