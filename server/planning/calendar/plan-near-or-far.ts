import { MINUTES_PER_DAY } from '../climate/constants.ts';
import type { CalendarInput } from './calendar-input.ts';
import type { CalendarPlan } from './calendar-plan.ts';
import { namedCalendar } from './named-calendar.ts';
import { planCalendar } from './plan-calendar.ts';
import { NEAR_DAYS } from './project/constants.ts';
import { solveCalendar } from './solve-calendar.ts';

/**
 * The plan of a calendar that may look far ahead, without looking further than it must.
 *
 * @param input see calendar-input.ts; its horizon is the furthest to look
 * @returns what planCalendar answers for a horizon of some weeks after the last given date, where anything fits in it;
 *   else for the whole horizon; sentences call batches and tasks by name
 *
 * Source: a rule of ours. What is ready earliest within the shorter horizon is so within the longer. Valid range: see
 * planCalendar. Departures: none. Example: a job of two weekends is planned within 45 days of 400.
 */
export function planNearOrFar(input: CalendarInput): CalendarPlan {
  const latest = Math.max(
    input.startMinute,
    ...input.pins.map(({ startMinute }) => startMinute),
    ...input.done.map(({ endMinute }) => endMinute),
    ...input.recipes.flatMap(({ steps }) => steps.map(({ materialMinute }) => materialMinute)),
  );
  const horizonDays = Math.ceil(latest / MINUTES_PER_DAY) + NEAR_DAYS;
  const near = { ...input, horizonDays: Math.min(horizonDays, input.horizonDays) };
  const chosen = solveCalendar(near, 'any').schedule === null ? input : near;
  return namedCalendar(planCalendar(chosen), chosen);
}
