import type { NewProject } from '../db/create-project.ts';
import { isDate } from './planning/calendar/is-date.ts';
import { dateOfDay, dayNumber } from './planning/calendar/project/day-number.ts';

const DAYS_PER_WEEK = 7;

/**
 * A project with its start and the dates of its orders, deliveries, payments, leftovers, days off, hours and quotes moved
 * by whole weeks, so that what was written for one day is as far off on another: within a week before it, on the same
 * weekdays.
 *
 * @param writtenFor @param today YYYY-MM-DD
 */
export function shiftDates<Project extends NewProject>(
  project: Project,
  writtenFor: string,
  today: string,
): Project {
  const weeks = Math.floor((dayNumber(today) - dayNumber(writtenFor)) / DAYS_PER_WEEK);
  const moved = (date: string): string =>
    isDate(date) ? dateOfDay(dayNumber(date) + weeks * DAYS_PER_WEEK) : date;
  const dated = <Row extends { readonly date: string }>(row: Row): Row => ({ ...row, date: moved(row.date) });
  return {
    ...project,
    settings: { ...project.settings, startDate: moved(project.settings.startDate) },
    onHand: project.onHand.map((row) => ({
      ...row,
      openedOn: moved(row.openedOn ?? ''),
      bestBefore: moved(row.bestBefore ?? ''),
    })),
    daysOff: project.daysOff.map(dated),
    arrivals: project.arrivals.map(dated),
    orders: project.orders.map(dated),
    receipts: project.receipts.map(dated),
    payments: project.payments.map(dated),
    stockUses: project.stockUses.map(dated),
    workHours: project.workHours.map(dated),
    quotes: project.quotes.map((quote) => ({ ...dated(quote), validUntil: moved(quote.validUntil) })),
  };
}
