import type { ClockShift } from '../../server/http/contract.ts';
import { clockMinute } from '../../server/planning/display/clock-minute.ts';

/** The minutes of a calendar answer as people read them: days, times, and the text a date field takes. */
export interface CalendarClock {
  /** "Sat 12 Dec"; with the year where it is not that of day 0. */
  readonly day: (minute: number) => string;
  /** "Saturday 12 December 2026" */
  readonly longDay: (minute: number) => string;
  /** "14:20" */
  readonly time: (minute: number) => string;
  /** "Sat 12 Dec 14:20" */
  readonly moment: (minute: number) => string;
  /** "09:00 to 09:35"; the day stands before an end on another day. */
  readonly span: (fromMinute: number, toMinute: number) => string;
  /** "2026-12-12T14:20", as pins and date fields hold it. */
  readonly local: (minute: number) => string;
  /** "2026-12-12" */
  readonly date: (minute: number) => string;
}

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
const MINUTES_PER_DAY = 1440;
const MINUTES_PER_HOUR = 60;
const MS_PER_DAY = 86_400_000;
const SHORT = 3;

export function calendarClock(firstDate: string, shifts: readonly ClockShift[]): CalendarClock {
  const firstMs = Date.parse(`${firstDate}T00:00:00Z`);
  const firstYear = new Date(firstMs).getUTCFullYear();
  const shown = (minute: number): number => Math.round(clockMinute(minute, shifts));
  const dateOf = (minute: number): Date =>
    new Date(firstMs + Math.floor(shown(minute) / MINUTES_PER_DAY) * MS_PER_DAY);
  const date = (minute: number): string => dateOf(minute).toISOString().slice(0, 10);
  const time = (minute: number): string => {
    const inDay = ((shown(minute) % MINUTES_PER_DAY) + MINUTES_PER_DAY) % MINUTES_PER_DAY;
    return `${two(Math.floor(inDay / MINUTES_PER_HOUR))}:${two(inDay % MINUTES_PER_HOUR)}`;
  };
  const day = (minute: number): string => {
    const at = dateOf(minute);
    const year = at.getUTCFullYear() === firstYear ? '' : ` ${at.getUTCFullYear()}`;
    const [weekday, month] = names(at).map((name) => name.slice(0, SHORT));
    return `${weekday} ${at.getUTCDate()} ${month}${year}`;
  };
  const moment = (minute: number): string => `${day(minute)} ${time(minute)}`;
  return {
    day,
    time,
    moment,
    date,
    longDay: (minute) => {
      const at = dateOf(minute);
      const [weekday, month] = names(at);
      return `${weekday} ${at.getUTCDate()} ${month} ${at.getUTCFullYear()}`;
    },
    span: (from, to) => `${time(from)} to ${date(from) === date(to) ? time(to) : moment(to)}`,
    local: (minute) => `${date(minute)}T${time(minute)}`,
  };
}

function names(at: Date): readonly [weekday: string, month: string] {
  return [WEEKDAYS[at.getUTCDay()] as string, MONTHS[at.getUTCMonth()] as string];
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}

/** "2026-12-12T14:20" as "Sat 12 Dec 2026 14:20"; what cannot be read so stands as it is. */
export function localText(local: string): string {
  const match = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d:\d\d))?$/.exec(local);
  const at = match === null ? null : new Date(`${match[1]}-${match[2]}-${match[3]}T00:00:00Z`);
  if (match === null || at === null || Number.isNaN(at.getTime())) return local;
  const [weekday, month] = names(at).map((name) => name.slice(0, SHORT));
  return [weekday, at.getUTCDate(), month, at.getUTCFullYear(), match[4]]
    .filter((part) => part !== undefined)
    .join(' ');
}
