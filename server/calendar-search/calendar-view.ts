import type { CalendarAnswer, CalendarDay, CalendarPlan } from '../http/contract.ts';
import type { PlannedProject } from '../http/project-plans.ts';
import type { WorkWindow } from '../planning/calendar/calendar-input.ts';
import { MOST_HORIZON_DAYS } from '../planning/calendar/constants.ts';
import { neededByMinute } from '../planning/calendar/needed-by-minute.ts';
import type { CalendarDays } from '../planning/calendar/project/calendar-days.ts';
import { climateOfProject } from '../planning/calendar/project/climate-of-project.ts';
import { dateOfDay, dayNumber, weekdayOfDay } from '../planning/calendar/project/day-number.ts';
import { hoursOfRows } from '../planning/calendar/project/hours-of-rows.ts';
import { realMinute } from '../planning/calendar/real-minute.ts';
import { taskLitres } from '../planning/calendar/task-litres.ts';
import { climateAt } from '../planning/climate/climate-at.ts';
import { dewMargin } from '../planning/climate/dew-margin.ts';
import type { Problem } from '../planning/problem.ts';
import { DAYS_AFTER, DAYS_WITHOUT_PLAN } from './calendar-settings.ts';
import { wayOutChanges } from './way-out-changes.ts';

const MIN_PER_DAY = 1440;
const MIN_PER_HOUR = 60;

/** What is shown of a calendar: the plan with the days, the air and the names around it. */
export function calendarView(
  { input, plan: projectPlan, project }: PlannedProject,
  plan: CalendarPlan | null,
  days: CalendarDays,
  problems: readonly Problem[],
): Pick<
  CalendarAnswer,
  | 'plan'
  | 'firstDate'
  | 'timeZone'
  | 'clockShifts'
  | 'days'
  | 'climate'
  | 'names'
  | 'coatLitres'
  | 'neededBy'
  | 'wayOutChanges'
  | 'problems'
> {
  const shown = shownDays(plan, days);
  const dayList = calendarDayList(input, days, shown);
  return {
    plan,
    firstDate: days.firstDate,
    timeZone: project.settings.timeZone,
    clockShifts: days.clockShifts,
    days: dayList,
    climate: hourlyAir(input, days, dayList.at(-1)?.toMinute ?? 0),
    names: {
      recipes: Object.fromEntries(input.recipes.map(({ id, name }) => [id, name.trim() || `Recipe ${id}`])),
      parts: Object.fromEntries(input.parts.map(({ id, name }) => [id, name.trim() || `Part ${id}`])),
    },
    coatLitres: plan === null ? {} : taskLitres(projectPlan.recipes, plan.tasks),
    neededBy: plan === null ? {} : neededByMinute(input, plan),
    wayOutChanges: (plan?.blocks ?? []).map(({ waysOut }) => waysOut.map((way) => wayOutChanges(way, input))),
    problems: [...problems, ...(plan?.problems ?? [])].map((problem) => atRow(problem, input)),
  };
}

/** Facts that name a task are placed at the task; the row it comes from is what the user sees. */
function atRow(problem: Problem, input: PlannedProject['input']): Problem {
  const { table, id, field } = problem.at;
  if ((table !== 'pins' && table !== 'doneTasks') || field !== 'taskId') return problem;
  const row = input[table].find(({ taskId }) => taskId === id);
  return row === undefined ? problem : { ...problem, at: { table, id: row.id, field } };
}

function shownDays(plan: CalendarPlan | null, days: CalendarDays): number {
  const today = Math.floor(days.fromMinute / MIN_PER_DAY);
  const ends = (plan?.tasks ?? []).map((task) => Math.max(task.endMinute, task.handleDryMinute ?? 0));
  if (ends.length === 0) return Math.min(MOST_HORIZON_DAYS, today + DAYS_WITHOUT_PLAN);
  const last = Math.max(...ends, plan?.readyToAssembleMinute ?? 0);
  return Math.min(MOST_HORIZON_DAYS, Math.max(today, Math.ceil(last / MIN_PER_DAY)) + DAYS_AFTER);
}

function calendarDayList(
  { shopHours, daysOff }: PlannedProject['input'],
  { firstDate, clockShifts }: CalendarDays,
  count: number,
): CalendarDay[] {
  const first = dayNumber(firstDate);
  const { hours } = hoursOfRows(shopHours);
  const offNotes = new Map(daysOff.map(({ date, note }) => [date.trim(), note]));
  return Array.from({ length: count }, (_, day): CalendarDay => {
    const date = dateOfDay(first + day);
    const weekday = weekdayOfDay(first + day);
    const note = offNotes.get(date);
    const realOf = (clockMin: number): number => realMinute(day * MIN_PER_DAY + clockMin, clockShifts);
    const windows = joined(note === undefined ? (hours[weekday] ?? []) : []).map(({ fromMin, toMin }) => ({
      fromMinute: realOf(fromMin),
      toMinute: realOf(toMin),
    }));
    return {
      date,
      weekday,
      fromMinute: realOf(0),
      toMinute: realOf(MIN_PER_DAY),
      windows,
      off: note !== undefined,
      note: note ?? '',
    };
  });
}

/** In order, and as one where they touch or overlap. */
function joined(windows: readonly WorkWindow[]): WorkWindow[] {
  const result: WorkWindow[] = [];
  for (const window of windows.toSorted((left, right) => left.fromMin - right.fromMin)) {
    const last = result.at(-1);
    if (last !== undefined && window.fromMin <= last.toMin)
      result[result.length - 1] = { ...last, toMin: Math.max(last.toMin, window.toMin) };
    else result.push(window);
  }
  return result;
}

function hourlyAir(
  input: PlannedProject['input'],
  days: CalendarDays,
  toMinute: number,
): CalendarAnswer['climate'] {
  const { climate } = climateOfProject(input, days);
  if (climate === null) return [];
  return Array.from({ length: Math.ceil(toMinute / MIN_PER_HOUR) }, (_, hour) => {
    const minute = hour * MIN_PER_HOUR;
    const { airC, relativeHumidityPercent } = climateAt(climate, minute);
    const woodC = airC + input.settings.woodWarmerC;
    const nearDew = !dewMargin(woodC, airC, relativeHumidityPercent).enough;
    return { minute, temperatureC: airC, humidityPercent: relativeHumidityPercent, nearDew };
  });
}
