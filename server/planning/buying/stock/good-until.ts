import { isDate } from '../../calendar/is-date.ts';
import { readFigure } from '../../finish/read-figure.ts';
import type { Product } from '../../product.ts';
import type { OnHand } from '../../project-input.ts';
import { afterMonths } from './after-months.ts';

/**
 * Until which day is a leftover good?
 *
 * @param row its best-before date and day of opening, YYYY-MM-DD or empty
 * @param product for its shelf life once opened, months; undefined when it is not in the catalogue
 * @returns the last good day: the best-before date, else the day of opening plus the shelf life; null when not known
 *
 * Source: the date printed on the can, or the catalogue's shelf life. Valid range: any. Departures: none.
 * Example: opened on 2027-01-10, 12 months: 2028-01-10.
 */
export function goodUntil(
  { bestBefore = '', openedOn = '' }: Pick<OnHand, 'bestBefore' | 'openedOn'>,
  product: Product | undefined,
): string | null {
  if (isDate(bestBefore)) return bestBefore;
  if (!isDate(openedOn) || product === undefined) return null;
  const { value } = readFigure(product, 'shelfLifeOpened');
  return value === null ? null : afterMonths(openedOn, value);
}
