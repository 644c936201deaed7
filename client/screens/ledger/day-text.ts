const MS_PER_DAY = 86_400_000;

/** Days since 1 January 1970 of a date such as 2026-03-09. */
export function dayOf(date: string): number {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / MS_PER_DAY);
}

const LONG = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeZone: 'UTC' });
const SHORT = new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short', timeZone: 'UTC' });

/** A day as people write it: "Mar 9, 2026", in the reader's own way. */
export function dayText(day: number): string {
  return LONG.format(day * MS_PER_DAY);
}

export function shortDayText(day: number): string {
  return SHORT.format(day * MS_PER_DAY);
}

/** A date as people write it; an empty one is nothing. */
export function dateText(date: string): string {
  return date === '' ? '' : dayText(dayOf(date));
}

export function shortDateText(date: string): string {
  return date === '' ? '' : shortDayText(dayOf(date));
}
