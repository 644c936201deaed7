import { readNumber } from './read-number.ts';
import { type Reading, refused, understood } from './reading.ts';

const MIN_PER_UNIT: Readonly<Record<string, number>> = {
  min: 1,
  m: 1,
  h: 60,
  hour: 60,
  hours: 60,
  d: 1440,
  day: 1440,
  days: 1440,
};

/**
 * How many minutes are typed? "90 min", "2 h", "1 h 30 min", "3 d". A bare number is refused: it could be minutes or
 * hours, and a coat laid at the wrong one is spoilt. Nothing typed is null.
 */
export function readDuration(typed: string): Reading<number | null> {
  const text = typed.trim().toLowerCase();
  if (text === '') return understood(null);
  const pieces = [...text.matchAll(/([\d.,]+)\s*([a-z]+)\s*/g)];
  const read = pieces.map(([, number = '', unit = '']) => ({
    value: readNumber(number, { least: 0 }),
    perUnit: MIN_PER_UNIT[unit],
  }));
  const whole =
    pieces.map(([match]) => match).join('') === text ||
    pieces.map(([match]) => match.trim()).join(' ') === text;
  let minutes = 0;
  for (const { value, perUnit } of read) {
    if (!value.ok || perUnit === undefined) return say(typed);
    minutes += value.value * perUnit;
  }
  return pieces.length === 0 || !whole ? say(typed) : understood(minutes);
}

function say(typed: string): Reading<number | null> {
  return refused(`"${typed.trim()}" does not say a time. Write one such as 30 min, 2 h or 3 d.`);
}
