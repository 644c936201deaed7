import type { PlannedProject } from '../http/project-plans.ts';
import type { CalendarInput } from '../planning/calendar/calendar-input.ts';
import type { CalendarDays } from '../planning/calendar/project/calendar-days.ts';
import { firstCalendarDate } from '../planning/calendar/project/first-calendar-date.ts';
import { projectCalendarInput } from '../planning/calendar/project-calendar-input.ts';
import { stableHash } from '../planning/cutting/found/stable-hash.ts';
import type { Problem } from '../planning/problem.ts';
import { FROM_STEP_MIN } from './calendar-settings.ts';
import { clockShiftsOf, dateInZone, minuteAt } from './zone-days.ts';

/** Rises when a stored calendar of an earlier program may not be shown any more. */
const FORMAT = 1;

/** What a calendar is to be worked out from. */
export interface CalendarQuestion {
  /** Names the question: equal for equal questions. */
  readonly hash: string;
  readonly days: CalendarDays;
  /** Null where nothing can be planned; the problems say why. */
  readonly input: CalendarInput | null;
  readonly problems: readonly Problem[];
}

/** The question a project asks, planned from a moment. */
export function calendarQuestion({ input, plan }: PlannedProject, plannedFrom: Date): CalendarQuestion {
  const { settings, climateRows } = input;
  const { timeZone } = settings;
  const firstDate = firstCalendarDate(input, dateInZone(plannedFrom, timeZone));
  const minute = minuteAt(plannedFrom, firstDate, timeZone);
  const days: CalendarDays = {
    firstDate,
    fromMinute: Math.ceil(minute / FROM_STEP_MIN) * FROM_STEP_MIN,
    clockShifts: clockShiftsOf(firstDate, timeZone),
  };
  const { calendar, problems } = projectCalendarInput(input, plan, days);
  // The climate may be thousands of hours; the few values it is made from say the same.
  const { climateKind, dayC, nightC, dayHumidity, nightHumidity } = settings;
  const air = { climateKind, dayC, nightC, dayHumidity, nightHumidity, climateRows };
  const hash = stableHash(
    JSON.stringify([FORMAT, firstDate, timeZone, air, calendar && { ...calendar, climate: null }]),
  );
  return { hash, days, input: calendar, problems };
}
