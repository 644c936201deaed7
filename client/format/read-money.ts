import { currencyDigits } from '../../server/planning/display/currency-digits.ts';
import { readNumber } from './read-number.ts';
import { type Reading, refused, understood } from './reading.ts';

/**
 * How many minor units does a typed price mean? Currency signs and codes around the number are passed over; more
 * decimals than the currency has are refused, nothing typed is null: price not known.
 */
export function readMoney(typed: string, currency: string): Reading<number | null> {
  const text = typed.replace(/^[^\d.,+-]+/, '').replace(/[^\d.,]+$/, '');
  if (typed.trim() === '' || typed.trim() === 'unknown') return understood(null);
  const amount = readNumber(ungrouped(text), { least: 0 });
  if (!amount.ok) return refused(`"${typed.trim()}" is not a price. Write an amount such as 12.50.`);
  const digits = currencyDigits(currency);
  const minor = Number((amount.value * 10 ** digits).toPrecision(15));
  if (!Number.isInteger(minor))
    return refused(`"${typed.trim()}" has more decimals than ${currency} has (${digits}).`);
  return understood(minor);
}

/** Where point and comma both stand, the last one marks decimals and the other only groups: "1,234.50", "1.234,50". */
function ungrouped(text: string): string {
  const point = text.lastIndexOf('.');
  const comma = text.lastIndexOf(',');
  if (point === -1 || comma === -1) return text;
  return text.replaceAll(point > comma ? ',' : '.', '');
}

/** A price as it stands in a field: digits only, so that it can be typed over. */
export function moneyInput(minor: number | null, currency: string): string {
  if (minor === null) return '';
  const digits = currencyDigits(currency);
  return (minor / 10 ** digits).toFixed(digits);
}
