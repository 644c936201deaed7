import type { Supplier } from '../../product.ts';
import { dateText } from './date-text.ts';
import { workingDayFrom } from './supplier-days.ts';

/**
 * Until when must something be ordered to be there in time?
 *
 * The goods come on the last working day of the supplier on or before the day they are needed; the order goes out so
 * many of its working days earlier as its lead time says.
 *
 * @param neededBy YYYY-MM-DD; null when not known
 * @param supplier lead time in working days (a part of a day counts whole) and weekdays on which it works; null when none
 *   is chosen
 * @param daysOff holidays and days off of the project, YYYY-MM-DD
 * @returns the last day to order and how it was found, sentence by sentence; null when something is not known
 *
 * Source: definition. Valid range: any. Departures: a day off of the project counts as one of the supplier too, for
 * nobody would take in the goods.
 * Example: needed on Monday 2027-04-05, 2 working days, nothing on Friday 2027-04-02: order by Wednesday 2027-03-31.
 */
export function orderBy({
  neededBy,
  why,
  supplier,
  daysOff,
}: {
  readonly neededBy: string | null;
  /** Why it is needed then, or why that is not known: a sentence. */
  readonly why: string;
  readonly supplier: Pick<Supplier, 'name' | 'leadTimeDays' | 'workingDays'> | null;
  readonly daysOff: ReadonlySet<string>;
}): { readonly date: string | null; readonly working: readonly string[] } {
  if (neededBy === null) return { date: null, working: [why] };
  const needed = `Needed on ${dateText(neededBy)}: ${why}`;
  if (supplier === null)
    return { date: null, working: [needed, 'No supplier is named, so its lead time is not known.'] };
  const { name, leadTimeDays, workingDays } = supplier;
  if (leadTimeDays === null)
    return { date: null, working: [needed, `The lead time of ${name} is not known.`] };
  const days = { workingDays, daysOff };
  const arrival = workingDayFrom(neededBy, 0, 'back', days);
  const steps = Math.ceil(leadTimeDays);
  const order = arrival === null ? null : workingDayFrom(arrival.date, steps, 'back', days);
  if (arrival === null || order === null)
    return { date: null, working: [needed, `${name} has no working days, so nothing can be ordered there.`] };
  return {
    date: order.date,
    working: [
      needed,
      arrival.date === neededBy
        ? `${name} can deliver on that day.`
        : `${name} last delivers on ${dateText(arrival.date)}; ${listed(arrival.skipped)} ${arrival.skipped.length === 1 ? 'is no working day' : 'are no working days'}.`,
      `${steps} working ${steps === 1 ? 'day' : 'days'} lead time before that is ${dateText(order.date)}.`,
      ...(order.skipped.length === 0 ? [] : [`Not counted: ${listed(order.skipped)}.`]),
    ],
  };
}

/** A working names so many days one by one. */
const DAYS_NAMED = 8;

function listed(dates: readonly string[]): string {
  const named = dates.slice(0, DAYS_NAMED).map(dateText).join(', ');
  return dates.length > DAYS_NAMED ? `${named} and ${dates.length - DAYS_NAMED} more` : named;
}
