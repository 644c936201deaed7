import { tzOffset } from '@date-fns/tz';
import type { ClockShift } from '../planning/calendar/clock-shift.ts';
import { MOST_HORIZON_DAYS } from '../planning/calendar/constants.ts';
import { dayNumber } from '../planning/calendar/project/day-number.ts';

/**
 * Dates and times of a time zone as the calendar's real minutes, and back: the one place that knows both. Minute 0 is the
 * first moment of the first date in the zone.
 */

const MS_PER_MIN = 60_000;
const MS_PER_DAY = 86_400_000;
const MIN_PER_DAY = 1440;
/** Longest time zones are from Greenwich, and a day more to be past any change of the night in question. */
const SCANNED_DAYS = MOST_HORIZON_DAYS + 2;

/** The date in a zone at a moment, YYYY-MM-DD. */
export function dateInZone(moment: Date, timeZone: string): string {
  return wallOf(moment.getTime(), timeZone).toISOString().slice(0, 'YYYY-MM-DD'.length);
}

/** The moment at which a date begins in a zone: midnight, or where clocks skip it the moment they are changed. */
export function startOfDate(date: string, timeZone: string): Date {
  const wall = dayNumber(date) * MS_PER_DAY;
  const before = offsetMs(wall - MS_PER_DAY, timeZone);
  const after = offsetMs(wall + MS_PER_DAY, timeZone);
  const found = [before, after]
    .map((offset) => ({ offset, moment: wall - offset }))
    .filter(({ offset, moment }) => offsetMs(moment, timeZone) === offset)
    .map(({ moment }) => moment);
  if (found.length > 0) return new Date(Math.min(...found));
  return new Date(changeWithin(wall - MS_PER_DAY - before, wall + MS_PER_DAY - after, timeZone));
}

/** Real minutes from the start of a date to a moment; whole where the moment is. */
export function minuteAt(moment: Date, firstDate: string, timeZone: string): number {
  return (moment.getTime() - startOfDate(firstDate, timeZone).getTime()) / MS_PER_MIN;
}

/** The moment so many real minutes after the start of a date. */
export function momentAt(minute: number, firstDate: string, timeZone: string): Date {
  return new Date(startOfDate(firstDate, timeZone).getTime() + minute * MS_PER_MIN);
}

/** When clocks are changed within the reach of a calendar that begins on a date. Kept for the dates last asked for. */
export function clockShiftsOf(firstDate: string, timeZone: string): readonly ClockShift[] {
  const key = `${firstDate} ${timeZone}`;
  const kept = keptShifts.get(key);
  if (kept !== undefined) return kept;
  const start = startOfDate(firstDate, timeZone).getTime();
  const wall = dayNumber(firstDate) * MS_PER_DAY;
  const aheadAt = (minute: number): number =>
    (start + offsetMs(start + minute * MS_PER_MIN, timeZone) - wall) / MS_PER_MIN;
  const shifts: ClockShift[] = [];
  let ahead = aheadAt(0);
  if (ahead !== 0) shifts.push({ fromMinute: 0, aheadMin: ahead });
  for (let day = 0; day < SCANNED_DAYS; day++) {
    const end = (day + 1) * MIN_PER_DAY;
    if (aheadAt(end) === ahead) continue;
    let low = day * MIN_PER_DAY;
    let high = end;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (aheadAt(middle) === ahead) low = middle;
      else high = middle;
    }
    ahead = aheadAt(high);
    shifts.push({ fromMinute: high, aheadMin: ahead });
  }
  keptShifts.set(key, shifts);
  for (const oldest of keptShifts.keys()) {
    if (keptShifts.size <= SHIFTS_KEPT) break;
    keptShifts.delete(oldest);
  }
  return shifts;
}

const SHIFTS_KEPT = 32;
const keptShifts = new Map<string, readonly ClockShift[]>();

/** A date whose UTC fields read what the clock on the wall shows. */
function wallOf(moment: number, timeZone: string): Date {
  return new Date(moment + offsetMs(moment, timeZone));
}

function offsetMs(moment: number, timeZone: string): number {
  return tzOffset(timeZone, new Date(moment)) * MS_PER_MIN;
}

/** The moment of the one change of clocks between two moments, to the minute. */
function changeWithin(from: number, to: number, timeZone: string): number {
  const before = offsetMs(from, timeZone);
  let low = from;
  let high = to;
  while (high - low > MS_PER_MIN) {
    const middle = Math.floor((low + high) / 2 / MS_PER_MIN) * MS_PER_MIN;
    if (offsetMs(middle, timeZone) === before) low = middle;
    else high = middle;
  }
  return high;
}
