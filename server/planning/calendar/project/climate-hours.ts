import { climateProblems } from '../../climate/climate-problems.ts';
import { MINUTES_PER_DAY, MINUTES_PER_HOUR } from '../../climate/constants.ts';
import type { ShopAir } from '../../climate/shop-climate.ts';
import type { Problem } from '../../problem.ts';
import type { ClimateRow } from '../../project-input.ts';
import { MOST_HORIZON_DAYS } from '../constants.ts';
import { isDate } from '../is-date.ts';
import { realMinute } from '../real-minute.ts';
import { type CalendarDays, dayOfDate } from './calendar-days.ts';
import { calendarProblem, quoted } from './calendar-problem.ts';
import { readClockTime } from './read-clock-time.ts';

interface Reading {
  readonly minute: number;
  readonly id: string;
  readonly air: ShopAir;
}

/**
 * What do typed or pasted readings say of the shop's air, hour by hour?
 *
 * @param rows dates and times as typed; C, percent
 * @param before the air before the first row, and the humidity where a row has none
 * @param days the calendar's days
 * @returns one value per real hour from minute 0 up to the last row, which then holds on; empty when no row can be used
 *
 * Source: a rule of ours: a reading holds until the next. Valid range: any rows. Departures: a reading counts from the
 * first full hour at or after it. Example: 12 C at 06:00 and 18 C at 08:00: hours 6 and 7 are 12 C.
 */
export function climateHours(
  rows: readonly ClimateRow[],
  before: ShopAir,
  days: CalendarDays,
): { readonly hours: readonly ShopAir[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const readings = new Map<number, Reading>();
  for (const row of rows) {
    const reading = readingOf(row, before, days, problems);
    if (reading === null) continue;
    if (readings.has(reading.minute))
      problems.push(
        calendarProblem(
          'calendar-row-twice',
          'warning',
          ['climateRows', row.id, row.time === '' ? 'date' : 'time'],
          `There is another reading for ${row.date}${row.time === '' ? '' : ` ${row.time}`}; the later row is taken.`,
          'Delete one of the two.',
        ),
      );
    readings.set(reading.minute, reading);
  }
  const sorted = [...readings.values()].sort((left, right) => left.minute - right.minute);
  const last = sorted.at(-1);
  if (last === undefined) {
    problems.push(
      calendarProblem(
        'climate-unknown',
        'warning',
        ['climateRows', null, null],
        'The shop’s air is to be read from rows, but there is none that can be used; the day values are taken at all hours.',
        'Type or paste temperatures by day or hour, or choose a constant climate.',
      ),
    );
    return { hours: [], problems };
  }
  const length = Math.min(
    (MOST_HORIZON_DAYS * MINUTES_PER_DAY) / MINUTES_PER_HOUR,
    Math.max(0, Math.ceil(last.minute / MINUTES_PER_HOUR)) + 1,
  );
  let next = 0;
  let air = before;
  const hours = Array.from({ length }, (_, hour) => {
    for (; (sorted[next]?.minute ?? Number.POSITIVE_INFINITY) <= hour * MINUTES_PER_HOUR; next++)
      air = sorted[next]?.air ?? air;
    return air;
  });
  return { hours, problems };
}

/** Null, with a problem, where the row cannot be used. */
function readingOf(
  row: ClimateRow,
  before: ShopAir,
  days: CalendarDays,
  problems: Problem[],
): Reading | null {
  const { id, date, time, temperatureC, humidityPercent } = row;
  const clock = time.trim() === '' ? 0 : readClockTime(time);
  const refuse = (field: string, message: string, wayOut: string): null => {
    const code =
      field === 'date'
        ? 'calendar-date-unreadable'
        : field === 'time'
          ? 'calendar-time-unreadable'
          : 'climate-invalid';
    problems.push(calendarProblem(code, 'error', ['climateRows', id, field], message, wayOut));
    return null;
  };
  if (!isDate(date.trim()))
    return refuse('date', `${quoted(date)} cannot be read as a date.`, 'Enter a date as 2027-03-14.');
  if (clock === null)
    return refuse(
      'time',
      `${quoted(time)} cannot be read as a time of day.`,
      'Enter a time as 06:00, or none for the whole day.',
    );
  if (temperatureC === null)
    return refuse(
      'temperatureC',
      'This row has no temperature.',
      'Enter the shop temperature, or delete the row.',
    );
  const air = {
    airC: temperatureC,
    relativeHumidityPercent: humidityPercent ?? before.relativeHumidityPercent,
  };
  const [wrong] = climateProblems({ kind: 'constant', air });
  if (wrong !== undefined)
    return refuse(
      wrong.at.field?.endsWith('airC') ? 'temperatureC' : 'humidityPercent',
      wrong.message,
      wrong.wayOut,
    );
  const minute = realMinute(dayOfDate(date.trim(), days) * MINUTES_PER_DAY + clock, days.clockShifts);
  return { minute, id, air };
}
