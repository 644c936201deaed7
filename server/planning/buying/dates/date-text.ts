import { dayNumber, weekdayOfDay } from '../../calendar/project/day-number.ts';

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** A date with its weekday, as workings name it: "Friday 2027-04-02". Our wording, no source. */
export function dateText(date: string): string {
  return `${WEEKDAYS[weekdayOfDay(dayNumber(date))]} ${date}`;
}
