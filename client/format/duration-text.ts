import { trimmedText } from '../../server/planning/display/fixed-text.ts';

const MIN_PER_HOUR = 60;
const HOURS_PER_DAY = 24;

/** Minutes as people say them: "45 min", "2 h 30 min", "3 d", "1 d 12 h". Rounded to the nearest minute. */
export function durationText(minutes: number): string {
  if (Math.abs(minutes) < MIN_PER_HOUR) return `${trimmedText(minutes, 1)} min`;
  const whole = Math.round(minutes);
  const days = Math.trunc(whole / (MIN_PER_HOUR * HOURS_PER_DAY));
  const hours = Math.trunc(whole / MIN_PER_HOUR) % HOURS_PER_DAY;
  const rest = whole % MIN_PER_HOUR;
  // Label times such as 36 or 72 hours stay in hours.
  if (days < 3)
    return [`${Math.trunc(whole / MIN_PER_HOUR)} h`, rest === 0 ? '' : `${rest} min`].join(' ').trim();
  return [`${days} d`, hours === 0 ? '' : `${hours} h`, rest === 0 ? '' : `${rest} min`]
    .filter((part) => part !== '')
    .join(' ');
}
