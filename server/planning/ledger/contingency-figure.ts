import { type Figure, figure } from '../figure.ts';
import { PERCENT_STEPS, WHOLE_IN_PERCENT_STEPS } from './constants.ts';
import { fractionHalfUp } from './fraction-half-up.ts';

/**
 * How much is set aside for what may still come dearer?
 *
 * contingency = to order x percent, rounded half up; what is ordered is no longer in doubt
 *
 * @param toOrderMinor whole minor units with tax; null is unknown
 * @param percent 0 to 100
 * @returns whole minor units
 *
 * Source: rule of ours. Example: 5 % of 99.99 is 5.00.
 */
export function contingencyFigure(toOrderMinor: number | null, percent: number): Figure {
  const steps = Math.round(percent * PERCENT_STEPS);
  return figure(
    toOrderMinor === null ? null : fractionHalfUp(toOrderMinor, steps, WHOLE_IN_PERCENT_STEPS),
    'minor',
    {
      rule: 'contingency = to order x percent, rounded half up',
      inputs: [
        { name: 'to order', value: toOrderMinor, unit: 'minor', from: 'ledger/totals/toOrder' },
        { name: 'contingency', value: percent, unit: 'percent', source: 'project setting' },
      ],
    },
  );
}
