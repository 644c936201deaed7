import { dayNumber } from '../../calendar/project/day-number.ts';
import type { BuyingLine } from '../buying-plan.ts';
import { SOON_DAYS } from '../constants.ts';

/**
 * How pressing is an order?
 *
 * @param orderBy last day to order; null when not known
 * @param neededBy first day of need; null when not known
 * @param today YYYY-MM-DD
 * @returns late when the last day is over, or where that is not known the day of need; today, soon within SOON_DAYS, else none
 *
 * Source: a rule of ours. Valid range: any dates. Departures: none.
 * Example: order by Friday, today Thursday: soon.
 */
export function urgency(
  orderBy: string | null,
  neededBy: string | null,
  today: string,
): BuyingLine['urgency'] {
  const last = orderBy ?? neededBy;
  if (last === null) return 'none';
  const days = dayNumber(last) - dayNumber(today);
  if (days < 0) return 'late';
  if (days === 0) return 'today';
  return days <= SOON_DAYS ? 'soon' : 'none';
}
