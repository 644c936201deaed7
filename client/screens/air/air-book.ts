import type { AirAnswer } from '../../../server/http/contract.ts';
import { trimmedText } from '../../../server/planning/display/fixed-text.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { type CalendarClock, calendarClock } from '../../format/calendar-clock.ts';

export type AirPlanView = AirAnswer['air'];
export type AirDayView = AirPlanView['days'][number];

/** The air check with the words the screen and the paper print it in. */
export interface AirBook {
  readonly plan: AirPlanView;
  readonly clock: CalendarClock;
  /** "3.2 ×": times the health limit. */
  readonly times: (index: number | null) => string;
  /** "6.1 %" of the lower explosive limit. */
  readonly percent: (percent: number | null) => string;
}

let last: { readonly answer: AirAnswer; readonly book: AirBook } | null = null;

export function airBook({ formats }: ScreenBook, answer: AirAnswer): AirBook {
  if (last?.answer === answer) return last.book;
  const book: AirBook = {
    plan: answer.air,
    clock: calendarClock(answer.firstDate, answer.clockShifts),
    times: (index) => (index === null ? formats.figure(null, 'ratio') : `${short(index)} ×`),
    percent: (percent) => (percent === null ? formats.figure(null, 'percent') : `${short(percent)} %`),
  };
  last = { answer, book };
  return book;
}

/** Two or three digits: more would promise more than the model keeps. A value just under its limit is not printed as on it. */
function short(value: number): string {
  const decimals = value >= 100 ? 0 : value >= 10 ? 1 : 2;
  const text = trimmedText(value, decimals);
  return value < 1 && text === '1' ? '0.99' : text;
}
