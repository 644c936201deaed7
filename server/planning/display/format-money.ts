import { UNKNOWN_TEXT } from './constants.ts';
import { currencyDigits } from './currency-digits.ts';

/**
 * How is a sum of money printed?
 *
 * `minor`: whole minor units (cents, pence; none for yen); null prints as "unknown". `currency`: ISO 4217 code.
 * `locale`: BCP 47 tag, decides separators and the place of the sign. Result: the amount with as many decimals as
 * ISO 4217 gives the currency. Throws RangeError for an amount that is not a whole
 * number of minor units and for a code that is not three letters. Source: ISO 4217 minor unit exponent.
 *
 * Example: `formatMoney(123450, 'USD')` is "$1,234.50"; `formatMoney(1234, 'JPY')` is "¥1,234".
 */
export function formatMoney(minor: number | null, currency: string, locale = 'en-US'): string {
  if (minor === null) return UNKNOWN_TEXT;
  if (!Number.isSafeInteger(minor))
    throw new RangeError(`formatMoney: minor must be a whole number of minor units, got ${minor}`);
  return printerOf(currency, locale).format((minor === 0 ? 0 : minor) / 10 ** currencyDigits(currency));
}

/** Making a printer costs far more than printing, and a project uses one currency. */
const printers = new Map<string, Intl.NumberFormat>();

function printerOf(currency: string, locale: string): Intl.NumberFormat {
  const key = `${locale} ${currency}`;
  const known = printers.get(key);
  if (known !== undefined) return known;
  const digits = currencyDigits(currency);
  const made = new Intl.NumberFormat(locale, {
    style: 'currency',
    currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  printers.set(key, made);
  return made;
}
