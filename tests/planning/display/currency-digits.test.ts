import { describe, expect, it } from 'vitest';
import { currencyDigits } from '../../../server/planning/display/currency-digits.ts';
import { formatMoney } from '../../../server/planning/display/format-money.ts';

// Minor units of ISO 4217 list one, from memory.
describe('the decimals of a currency', () => {
  it('are those of ISO 4217', () => {
    const digits = (codes: string) => codes.split(' ').map(currencyDigits);
    expect(digits('EUR USD GBP CHF')).toEqual([2, 2, 2, 2]);
    expect(digits('JPY KRW ISK VND CLP XAF')).toEqual([0, 0, 0, 0, 0, 0]);
    expect(digits('KWD BHD OMR JOD TND LYD IQD')).toEqual([3, 3, 3, 3, 3, 3, 3]);
    expect(currencyDigits('CLF')).toBe(4);
  });

  it('are not what shops of a country happen to use', () => {
    // The standard gives the forint and the rupiah two, which runtimes print without any.
    expect(['HUF', 'IDR', 'COP', 'PKR', 'RSD'].map(currencyDigits)).toEqual([2, 2, 2, 2, 2]);
  });

  it('are two where the standard has no such code', () => {
    expect(['XYZ', 'constructor', ''].map(currencyDigits)).toEqual([2, 2, 2]);
  });

  it('are those that sums are printed with', () => {
    expect(formatMoney(1234, 'JPY')).toBe('¥1,234');
    expect(formatMoney(1234, 'KWD').replace(/\s/g, ' ')).toBe('KWD 1.234');
    expect(formatMoney(1234, 'HUF').replace(/\s/g, ' ')).toBe('HUF 12.34');
    expect(formatMoney(1234, 'IQD').replace(/\s/g, ' ')).toBe('IQD 1.234');
  });
});
