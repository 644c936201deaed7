import { climateProblems } from '../../climate/climate-problems.ts';
import { MINUTES_PER_DAY, MINUTES_PER_HOUR } from '../../climate/constants.ts';
import type { ShopAir, ShopClimate } from '../../climate/shop-climate.ts';
import { clockMinute } from '../../display/clock-minute.ts';
import type { Problem } from '../../problem.ts';
import type { ProjectInput, ProjectSettings } from '../../project-input.ts';
import { MOST_HORIZON_DAYS } from '../constants.ts';
import type { CalendarDays } from './calendar-days.ts';
import { calendarProblem } from './calendar-problem.ts';
import { climateHours } from './climate-hours.ts';
import { DAY_FROM_MIN, NIGHT_FROM_MIN } from './constants.ts';

/** Where the settings keep what climateProblems names. */
const FIELDS: Readonly<Record<string, string>> = {
  'climate.day.airC': 'dayC',
  'climate.day.relativeHumidityPercent': 'dayHumidity',
  'climate.night.airC': 'nightC',
  'climate.night.relativeHumidityPercent': 'nightHumidity',
};

/**
 * What does the shop's air do over the days of a calendar?
 *
 * @param input settings and climate rows: C, percent, dates as typed
 * @param days the calendar's days
 * @returns the climate in real minutes, and problems; null when the settings cannot be used
 *
 * Source: definition; the hours of day and night are assumptions of ours. Valid range: any. Departures: where clocks are
 * changed, day and night are laid out hour by hour, so that the heating follows the clock.
 * Example: 20 C and 15 C: 20 C from 07:00 to 21:00, else 15 C.
 */
export function climateOfProject(
  { settings, climateRows }: Pick<ProjectInput, 'settings' | 'climateRows'>,
  days: CalendarDays,
): { readonly climate: ShopClimate | null; readonly problems: readonly Problem[] } {
  const day: ShopAir = { airC: settings.dayC, relativeHumidityPercent: settings.dayHumidity };
  const night: ShopAir = { airC: settings.nightC, relativeHumidityPercent: settings.nightHumidity };
  const dayNight = {
    kind: 'day-night',
    day,
    night,
    dayFromMinute: DAY_FROM_MIN,
    nightFromMinute: NIGHT_FROM_MIN,
  } as const;
  const usable = climateProblems(
    settings.climateKind === 'day-night' ? dayNight : { ...dayNight, night: day },
  );
  if (usable.length > 0) return { climate: null, problems: uniqueByField(usable.map(inSettings)) };

  if (settings.climateKind === 'constant') return { climate: { kind: 'constant', air: day }, problems: [] };
  if (settings.climateKind === 'hourly') {
    const { hours, problems } = climateHours(climateRows, day, days);
    return {
      climate: hours.length === 0 ? { kind: 'constant', air: day } : { kind: 'hourly', hours },
      problems,
    };
  }
  const problems = nightProblems(settings);
  if (days.clockShifts.length === 0) return { climate: dayNight, problems };
  const hours = Array.from(
    { length: (MOST_HORIZON_DAYS * MINUTES_PER_DAY) / MINUTES_PER_HOUR },
    (_, hour) => {
      const clock = clockMinute(hour * MINUTES_PER_HOUR, days.clockShifts) % MINUTES_PER_DAY;
      return clock >= DAY_FROM_MIN && clock < NIGHT_FROM_MIN ? day : night;
    },
  );
  return { climate: { kind: 'hourly', hours }, problems };
}

function inSettings(problem: Problem): Problem {
  const field = FIELDS[problem.at.field ?? ''] ?? 'climateKind';
  return { ...problem, code: 'climate-invalid', at: { table: 'settings', id: null, field } };
}

function uniqueByField(problems: readonly Problem[]): Problem[] {
  return problems.filter(({ at }, index) => problems.findIndex((one) => one.at.field === at.field) === index);
}

function nightProblems({ dayC, nightC }: ProjectSettings): Problem[] {
  if (!(nightC > dayC)) return [];
  return [
    calendarProblem(
      'climate-invalid',
      'warning',
      ['settings', null, 'nightC'],
      `The night, ${nightC} °C, is warmer than the day, ${dayC} °C.`,
      'Swap the two, if they were mixed up; the calendar takes them as they are.',
    ),
  ];
}
