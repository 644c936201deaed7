import type { CalendarAir } from '../../../server/http/contract.ts';

/** The air the plan reckons with at a minute; null outside the shown span. */
export function airAt(climate: readonly CalendarAir[], minute: number): CalendarAir | null {
  return climate.findLast((air) => air.minute <= minute) ?? null;
}
