import { MINUTES_PER_DAY } from '../../climate/constants.ts';
import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import { MOST_HORIZON_DAYS } from '../constants.ts';
import { isDate } from '../is-date.ts';
import { realMinute } from '../real-minute.ts';
import { type CalendarDays, dayOfDate } from './calendar-days.ts';
import { calendarProblem, quoted } from './calendar-problem.ts';

/**
 * When is each product in the shop?
 *
 * @param input its arrivals, dates as typed, and the catalogue
 * @param days the calendar's days
 * @returns product id to real minutes after midnight of day 0, for products that are still to come; and problems
 *
 * Source: a rule of ours: a product can be used from the beginning of the day it arrives. Valid range: any rows.
 * Departures: of two dates for one product the later counts. Example: day 0 is 2027-03-13, arrival 2027-03-14: 1440.
 */
export function arrivalMinutes(
  { arrivals, catalogue }: Pick<ProjectInput, 'arrivals' | 'catalogue'>,
  days: CalendarDays,
): { readonly minutes: ReadonlyMap<string, number>; readonly problems: readonly Problem[] } {
  const minutes = new Map<string, number>();
  const problems: Problem[] = [];
  for (const { id, productId, date } of arrivals) {
    if (!isDate(date.trim())) {
      problems.push(
        calendarProblem(
          'calendar-date-unreadable',
          'error',
          ['arrivals', id, 'date'],
          date.trim() === ''
            ? 'The date of arrival is missing.'
            : `${quoted(date)} cannot be read as a date.`,
          'Enter a date as 2027-03-14.',
        ),
      );
      continue;
    }
    if (!catalogue.products.some((product) => product.id === productId)) {
      problems.push(
        calendarProblem(
          'product-unknown',
          'warning',
          ['arrivals', id, 'productId'],
          `There is no product ${quoted(productId)} whose arrival could be waited for.`,
          'Choose a product of the catalogue, or delete the row.',
        ),
      );
      continue;
    }
    const day = dayOfDate(date.trim(), days);
    if (day >= MOST_HORIZON_DAYS) {
      problems.push(
        calendarProblem(
          'calendar-date-out-of-reach',
          'error',
          ['arrivals', id, 'date'],
          `The calendar looks ${MOST_HORIZON_DAYS} days ahead, and ${date.trim()} is after that.`,
          'Enter an earlier date, or plan this later.',
        ),
      );
      continue;
    }
    const minute = Math.max(0, realMinute(day * MINUTES_PER_DAY, days.clockShifts));
    const before = minutes.get(productId);
    if (before !== undefined)
      problems.push(
        calendarProblem(
          'calendar-row-twice',
          'warning',
          ['arrivals', id, 'productId'],
          'This product has another date of arrival; the later one counts.',
          'Delete one of the two rows.',
        ),
      );
    minutes.set(productId, Math.max(minute, before ?? 0));
  }
  return { minutes, problems };
}
