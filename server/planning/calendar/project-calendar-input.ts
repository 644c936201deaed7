import { MINUTES_PER_DAY } from '../climate/constants.ts';
import { DEFAULT_DRYING_RULE, type DryingRule } from '../climate/drying-rule.ts';
import type { Plan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { ProjectInput, ProjectSettings } from '../project-input.ts';
import type { CalendarInput } from './calendar-input.ts';
import { calendarTasks } from './calendar-tasks.ts';
import { MOST_HORIZON_DAYS } from './constants.ts';
import { isDate } from './is-date.ts';
import { arrivalMinutes } from './project/arrival-minutes.ts';
import { type CalendarDays, dayOfDate } from './project/calendar-days.ts';
import { calendarFacts } from './project/calendar-facts.ts';
import { calendarPieces } from './project/calendar-pieces.ts';
import { calendarProblem, quoted } from './project/calendar-problem.ts';
import { calendarRecipes } from './project/calendar-recipes.ts';
import { calendarVapour } from './project/calendar-vapour.ts';
import { climateOfProject } from './project/climate-of-project.ts';
import { PROJECT_ITERATIONS, PROJECT_STEP_MIN } from './project/constants.ts';
import { dayNumber, weekdayOfDay } from './project/day-number.ts';
import { hoursOfRows } from './project/hours-of-rows.ts';
import { pinOrderProblems } from './project/pin-order-problems.ts';
import { wetEdgeProblems } from './project/wet-edge-problems.ts';
import { realMinute } from './real-minute.ts';

/** One seed for all projects: the same project, the same calendar. */
const SEED = 1;
/** The drying rule is written per 10 C; the setting says after how many degrees drying doubles. */
const RULE_STEP_C = 10;

/**
 * What does the coat calendar have to plan for a project?
 *
 * @param input the project; dates and times as typed, areas m2, temperatures C
 * @param plan the project's plan, for numbers and areas of the parts, and for the litres of its coats where the air is to be
 *   kept under the health limit
 * @param days day 0, the moment to plan from and the clock changes, from whoever knows the time
 * @returns the calendar's input; null where nothing can be planned from what is there; and a located problem for every
 *   value that cannot be used
 *
 * Source: definition. Valid range: any project. Departures: a row that cannot be used is left out, and said.
 * Example: an empty project: no pieces, so a calendar with nothing to do.
 */
export function projectCalendarInput(
  input: ProjectInput,
  plan: Pick<Plan, 'parts'> & Partial<Pick<Plan, 'recipes'>>,
  days: CalendarDays,
): { readonly calendar: CalendarInput | null; readonly problems: readonly Problem[] } {
  const { settings } = input;
  const hours = hoursOfRows(input.shopHours);
  const off = daysOff(input, days);
  const climate = climateOfProject(input, days);
  const start = startOf(settings, days);
  const arrivals = arrivalMinutes(input, days);
  const facts = calendarFacts(input, days, start.minute ?? days.fromMinute);
  const recipes = calendarRecipes(input, arrivals.minutes);
  const pieces = calendarPieces(input.parts, plan.parts, input.recipes);
  const air = vapourOf(input, plan);
  const parts = [hours, off, climate, start, arrivals, facts, recipes, pieces, air];
  const problems = [...parts.flatMap((part) => part.problems), ...wetEdgeProblems(input, pieces.pieces)];
  const possible = hours.hours.some((windows) => windows.length > 0);
  const refused = settings.keepUnderHealthLimit && air.vapour === null;
  if (climate.climate === null || start.minute === null || !possible || refused)
    return { calendar: null, problems };

  const calendar: CalendarInput = {
    units: settings.units,
    firstWeekday: weekdayOfDay(dayNumber(days.firstDate)),
    clockShifts: days.clockShifts,
    startMinute: start.minute,
    horizonDays: MOST_HORIZON_DAYS,
    stepMin: PROJECT_STEP_MIN,
    hours: hours.hours,
    daysOff: off.days,
    hands: settings.hands,
    rackM2: settings.rackM2,
    largestBatchM2: settings.largestBatchM2,
    climate: climate.climate,
    dryingRule: dryingRule(settings),
    woodWarmerC: settings.woodWarmerC,
    sandsApart: settings.sandsApart,
    recipes: recipes.recipes,
    pieces: pieces.pieces,
    pins: facts.pins,
    done: facts.done,
    ...(air.vapour === null ? {} : { vapour: air.vapour }),
    seed: SEED,
    iterations: PROJECT_ITERATIONS,
  };
  const order =
    facts.pins.length < 2 ? [] : pinOrderProblems(calendarTasks(calendar).batches, facts.pins, input.pins);
  return { calendar, problems: [...problems, ...order] };
}

/** Nothing where the health limit is not asked for. */
function vapourOf(
  input: ProjectInput,
  plan: Pick<Plan, 'parts'> & Partial<Pick<Plan, 'recipes'>>,
): ReturnType<typeof calendarVapour> {
  if (!input.settings.keepUnderHealthLimit) return { vapour: null, problems: [] };
  if (plan.recipes === undefined)
    throw new RangeError('projectCalendarInput needs the recipes of the plan to keep under the health limit');
  return calendarVapour(input, { parts: plan.parts, recipes: plan.recipes });
}

function dryingRule({ dryingDoublesPerC, dryingUsesHumidity }: ProjectSettings): DryingRule {
  return {
    ...DEFAULT_DRYING_RULE,
    factorPer10C: 2 ** (RULE_STEP_C / dryingDoublesPerC),
    waterborne: dryingUsesHumidity ? 'vapour-deficit' : 'temperature-only',
  };
}

/** The minute nothing new begins before; null where the first day is out of reach. */
function startOf(
  { startDate }: ProjectSettings,
  days: CalendarDays,
): { readonly minute: number | null; readonly problems: readonly Problem[] } {
  if (startDate === '') return { minute: days.fromMinute, problems: [] };
  const place = ['settings', null, 'startDate'] as const;
  if (!isDate(startDate)) {
    const message = `${quoted(startDate)} cannot be read as a date.`;
    const wayOut = 'Enter the first day of finishing as 2027-03-14, or nothing for today.';
    return {
      minute: null,
      problems: [calendarProblem('calendar-date-unreadable', 'error', place, message, wayOut)],
    };
  }
  const day = dayOfDate(startDate, days);
  if (day >= MOST_HORIZON_DAYS) {
    const message = `The calendar looks ${MOST_HORIZON_DAYS} days ahead, and finishing begins on ${startDate}, after that.`;
    const wayOut = 'Enter an earlier first day, or plan this later.';
    return {
      minute: null,
      problems: [calendarProblem('calendar-date-out-of-reach', 'error', place, message, wayOut)],
    };
  }
  return {
    minute: Math.max(days.fromMinute, realMinute(day * MINUTES_PER_DAY, days.clockShifts)),
    problems: [],
  };
}

/** Day numbers without work; what lies outside the calendar's reach does not matter to it. */
function daysOff(
  { daysOff: rows }: Pick<ProjectInput, 'daysOff'>,
  days: CalendarDays,
): { readonly days: readonly number[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const off = new Set<number>();
  for (const { id, date } of rows) {
    if (isDate(date.trim())) off.add(dayOfDate(date.trim(), days));
    else
      problems.push(
        calendarProblem(
          'calendar-date-unreadable',
          'error',
          ['daysOff', id, 'date'],
          date.trim() === ''
            ? 'The date of this day off is missing.'
            : `${quoted(date)} cannot be read as a date.`,
          'Enter a date as 2027-12-24.',
        ),
      );
  }
  const inReach = [...off].filter((day) => day >= 0 && day < MOST_HORIZON_DAYS);
  return { days: inReach.sort((left, right) => left - right), problems };
}
