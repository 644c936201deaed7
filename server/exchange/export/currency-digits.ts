/**
 * How many decimals does a currency have? `currency`: ISO 4217 code. Result: 2 for EUR, 0 for JPY, 3 for KWD.
 * Source: ISO 4217 minor unit exponent, which `Intl.NumberFormat` knows; 2 for codes it does not.
 */
export function currencyDigits(currency: string): number {
  return (
    new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2
  );
}
