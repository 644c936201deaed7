import { UNKNOWN_TEXT } from './constants.ts';
import { trimmedText } from './fixed-text.ts';

/** Narrow no-break space: groups digits without being read as a decimal mark. */
const GROUP_MARK = '\u202f';
const GROUP_FROM = 10_000;

/**
 * How is a count of pieces printed?
 *
 * `count`: pieces; null prints as "unknown". Result: digits, grouped in threes by a narrow space from 10 000 up, as
 * ISO 80000-1 recommends; up to two decimals where the count is not whole.
 *
 * Example: `formatCount(20480)` is "20 480" with a narrow space, `formatCount(4)` is "4".
 */
export function formatCount(count: number | null): string {
  if (count === null) return UNKNOWN_TEXT;
  const [whole = '', decimals] = trimmedText(count, 2).split('.');
  const grouped = Math.abs(count) < GROUP_FROM ? whole : whole.replace(/\B(?=(\d{3})+$)/g, GROUP_MARK);
  return decimals === undefined ? grouped : `${grouped}.${decimals}`;
}
