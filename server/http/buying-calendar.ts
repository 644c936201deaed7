import type { BuyingCalendar } from '../planning/buying/dates/needed-by.ts';
import type { CalendarAnswer } from './contract.ts';

/** The calendar as buying and tables take it; null before one is worked out. */
export function buyingCalendar({
  plan,
  firstDate,
  clockShifts,
  stale,
}: CalendarAnswer): BuyingCalendar | null {
  return plan === null ? null : { plan, firstDate, clockShifts, stale };
}
