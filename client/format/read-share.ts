import { type NumberRange, readNumber } from './read-number.ts';
import { type Reading, understood } from './reading.ts';

/** What share of 1 is typed as a percentage? "10" and "10 %" are 0.1. `range` is in percent. */
export function readShare(typed: string, range: NumberRange = {}): Reading<number> {
  const percent = readNumber(typed.replace(/%\s*$/, ''), range);
  // Divided as text would be, so that 7 % is 0.07 and not 0.07000000000000001.
  return percent.ok ? understood(Number((percent.value / 100).toPrecision(12))) : percent;
}
