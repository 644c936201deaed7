import { isDate } from '../../calendar/is-date.ts';
import type { Supplier } from '../../product.ts';
import { workingDayFrom } from './supplier-days.ts';

/**
 * When should an order be here?
 *
 * @param orderedOn YYYY-MM-DD, or empty
 * @param supplier lead time in working days and weekdays on which it works; null when not known
 * @param daysOff holidays and days off of the project, YYYY-MM-DD
 * @returns the date; null when the order has none, or the lead time is not known
 *
 * Source: definition, as `orderBy` counts back. Valid range: any. Departures: none.
 * Example: ordered on Thursday, 2 working days, Monday to Friday: Monday.
 */
export function expectedOn(
  orderedOn: string,
  supplier: Pick<Supplier, 'leadTimeDays' | 'workingDays'> | null,
  daysOff: ReadonlySet<string>,
): string | null {
  if (!isDate(orderedOn) || supplier === null || supplier.leadTimeDays === null) return null;
  const { workingDays, leadTimeDays } = supplier;
  return workingDayFrom(orderedOn, Math.ceil(leadTimeDays), 'on', { workingDays, daysOff })?.date ?? null;
}
