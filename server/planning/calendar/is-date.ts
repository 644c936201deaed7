const DATE = /^(\d{4})-(\d\d)-(\d\d)$/;
const FEBRUARY = 2;
const THIRTY_DAYS = [4, 6, 9, 11];

/**
 * Is a text a day that exists, written as 2027-03-14?
 *
 * @param text any text
 * @returns true for YYYY-MM-DD with a month of the year and a day of the month
 *
 * Source: ISO 8601 calendar dates; leap years by the Gregorian rule. Valid range: years 0001 to 9999. Departures: none.
 * Example: 2028-02-29 is one, 2027-02-29 is not.
 */
export function isDate(text: string): boolean {
  const [, years, months, days] = DATE.exec(text) ?? [];
  if (years === undefined) return false;
  const year = Number(years);
  const month = Number(months);
  const day = Number(days);
  return year >= 1 && month >= 1 && month <= 12 && day >= 1 && day <= daysOf(year, month);
}

function daysOf(year: number, month: number): number {
  if (month === FEBRUARY) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return THIRTY_DAYS.includes(month) ? 30 : 31;
}
