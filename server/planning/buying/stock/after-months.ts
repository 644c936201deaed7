import { dateOfDay, dayNumber } from '../../calendar/project/day-number.ts';

const MONTHS_PER_YEAR = 12;
/** A part of a month counts by this many days. */
const DAYS_PER_MONTH = 30;
const LAST_DATE = '9999-12-31';

/**
 * Which day is so many months after a date?
 *
 * @param date YYYY-MM-DD
 * @param months 0 or more; a part of a month counts by days of a 30th of a month
 * @returns the same day of the month, or the last one of a shorter month
 *
 * Source: definition. Valid range: to the end of the year 9999, which stands for everything later. Departures: none.
 * Example: 2027-01-31 and 1 month: 2027-02-28.
 */
export function afterMonths(date: string, months: number): string {
  if (!(months >= 0)) throw new RangeError(`afterMonths: months must be at least 0, got ${months}`);
  const whole = Math.floor(months);
  const restDays = Math.round((months - whole) * DAYS_PER_MONTH);
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  const count = year * MONTHS_PER_YEAR + month - 1 + whole;
  const years = Math.floor(count / MONTHS_PER_YEAR);
  if (years >= 9999) return LAST_DATE;
  const monthText = String((count % MONTHS_PER_YEAR) + 1).padStart(2, '0');
  const first = dayNumber(`${String(years).padStart(4, '0')}-${monthText}-01`);
  const next =
    (count % MONTHS_PER_YEAR) + 1 === MONTHS_PER_YEAR
      ? `${years + 1}-01`
      : `${years}-${String((count % MONTHS_PER_YEAR) + 2).padStart(2, '0')}`;
  const length = dayNumber(`${next.padStart(7, '0')}-01`) - first;
  return dateOfDay(first + Math.min(day, length) - 1 + restDays);
}
