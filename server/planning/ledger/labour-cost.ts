import { type Figure, figure } from '../figure.ts';
import type { WorkHours } from '../project-input.ts';
import { MILLION } from './constants.ts';
import { fractionHalfUp } from './fraction-half-up.ts';

const MIN_PER_HOUR = 60;

/**
 * What are one's own hours worth?
 *
 * labour = (hours at work so far + hands-on hours still to come) x rate, rounded half up
 *
 * @param handsOnMin minutes of hands-on work the coat calendar still plans; null when there is no calendar
 * @param rateMinorPerHour whole minor units; null when hours are not counted
 * @returns whole minor units; unknown without a rate. What the calendar does not plan, such as sawing, counts once it is
 *   entered.
 *
 * Source: rule of ours. Example: 6 h done, 90 min to come at 20.00: 150.00.
 */
export function labourCost(
  workHours: readonly WorkHours[],
  handsOnMin: number | null,
  rateMinorPerHour: number | null,
): Figure {
  const done = workHours.reduce((sum, { hours }) => sum + Math.round(hours * MILLION), 0);
  const toCome = handsOnMin === null ? 0 : Math.round((handsOnMin * MILLION) / MIN_PER_HOUR);
  const hours = done + toCome;
  const known = rateMinorPerHour !== null && Number.isSafeInteger(hours);
  const value = known ? fractionHalfUp(rateMinorPerHour, hours, MILLION) : null;
  return figure(value !== null && Number.isSafeInteger(value) ? value : null, 'minor', {
    rule: 'labour = (hours at work so far + hands-on hours still to come) x rate, rounded half up',
    inputs: [
      { name: 'hours at work so far', value: done / MILLION, unit: '' },
      { name: 'hands-on hours of the coat calendar still to come', value: toCome / MILLION, unit: '' },
      { name: 'rate for an hour', value: rateMinorPerHour, unit: 'minor', source: 'project setting' },
    ],
    notes: [
      ...(rateMinorPerHour === null ? ['No rate is set, so hours are not counted.'] : []),
      ...(handsOnMin === null ? ['There is no coat calendar yet, so only hours so far count.'] : []),
      'Work that the coat calendar does not plan, such as sawing and assembly, counts once its hours are entered.',
    ],
  });
}
