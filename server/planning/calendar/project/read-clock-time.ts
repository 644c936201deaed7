import { MINUTES_PER_DAY, MINUTES_PER_HOUR } from '../../climate/constants.ts';

const CLOCK = /^(\d{1,2})(?:[:.](\d{2}))?\s*(am|pm|a\.m\.|p\.m\.)?$/i;
const HALF_DAY_HOURS = 12;

/**
 * Which time of day does a cell say?
 *
 * @param text as typed: "18:00", "9", "9.30", "6 pm", "24:00"
 * @returns minutes after midnight, 0 to 1440; null when it cannot be read
 *
 * Source: common notations. Valid range: any text. Departures: 12 am is midnight and 12 pm noon, as is usual where am and
 * pm are written. Example: "6:30 pm" is 1110.
 */
export function readClockTime(text: string): number | null {
  const [, hours, minutes = '0', half] = CLOCK.exec(text.trim()) ?? [];
  if (hours === undefined) return null;
  let hour = Number(hours);
  if (half !== undefined) {
    if (hour < 1 || hour > HALF_DAY_HOURS) return null;
    hour = (hour % HALF_DAY_HOURS) + (half.toLowerCase().startsWith('p') ? HALF_DAY_HOURS : 0);
  }
  if (Number(minutes) >= MINUTES_PER_HOUR) return null;
  const minute = hour * MINUTES_PER_HOUR + Number(minutes);
  return minute <= MINUTES_PER_DAY ? minute : null;
}
