/** Decimals of the currencies of ISO 4217 that do not have two. */
const DIGITS: Readonly<Record<string, number>> = {
  ...digitsOf(0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'),
  ...digitsOf(3, 'BHD IQD JOD KWD LYD OMR TND'),
  ...digitsOf(4, 'CLF UYW'),
};
const MOST_CURRENCIES_HAVE = 2;

function digitsOf(digits: number, codes: string): Record<string, number> {
  return Object.fromEntries(codes.split(' ').map((code) => [code, digits]));
}

/**
 * How many decimals does a currency have?
 *
 * @param currency ISO 4217 code
 * @returns digits of its minor unit: 2 for EUR, 0 for JPY, 3 for KWD; 2 for codes the standard does not have
 *
 * Source: ISO 4217 list one, column "minor unit", from memory. Departure: `Intl.NumberFormat` is not asked, since it knows
 *   what is used in shops and not the standard (0 for the forint and the rupiah, which have 2; 0 for the Iraqi dinar, which
 *   has 3), and may differ between a server and a browser: the same whole number would be another amount in each.
 */
export function currencyDigits(currency: string): number {
  return Object.hasOwn(DIGITS, currency) ? (DIGITS[currency] ?? MOST_CURRENCIES_HAVE) : MOST_CURRENCIES_HAVE;
}
