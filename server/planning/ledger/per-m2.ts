import { type Figure, figure } from '../figure.ts';
import { MILLION } from './constants.ts';
import { fractionHalfUp } from './fraction-half-up.ts';

/**
 * What is a sum of money per square metre?
 *
 * @param areaM2 area finished; null when it is not known
 * @returns whole minor units, rounded half up; unknown when nothing is finished, or it is not known how much
 *
 * Source: definition. Example: 500.00 over 8 m2 is 62.50.
 */
export function perM2(cost: Figure, areaM2: number | null): Figure {
  const millionths = areaM2 === null ? 0 : Math.round(areaM2 * MILLION);
  const known = cost.value !== null && millionths > 0;
  return figure(known ? fractionHalfUp(cost.value ?? 0, MILLION, millionths) : null, 'minor', {
    rule: 'cost per square metre = cost / area finished, rounded half up',
    inputs: [
      { name: 'cost', value: cost.value, unit: 'minor' },
      { name: 'area finished', value: areaM2, unit: 'm2' },
    ],
    ...(known ? {} : { notes: ['Nothing is finished, or it is not known how much.'] }),
  });
}
