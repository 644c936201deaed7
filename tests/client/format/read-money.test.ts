import { describe, expect, it } from 'vitest';
import { moneyInput, readMoney } from '../../../client/format/read-money.ts';

describe('a typed price', () => {
  it('becomes whole minor units of its currency', () => {
    expect(readMoney('12.50', 'USD')).toEqual({ ok: true, value: 1250 });
    expect(readMoney('12,5', 'EUR')).toEqual({ ok: true, value: 1250 });
    // 19.99 x 100 is 1998.9999999999998 in binary; the digits typed count.
    expect(readMoney('19.99', 'USD')).toEqual({ ok: true, value: 1999 });
    // The yen has no minor unit, the Bahraini dinar three decimals (ISO 4217).
    expect(readMoney('1200', 'JPY')).toEqual({ ok: true, value: 1200 });
    expect(readMoney('1.234', 'BHD')).toEqual({ ok: true, value: 1234 });
  });

  it('passes over currency signs, and over grouping where a decimal mark stands too', () => {
    expect(readMoney('$1,234.50', 'USD')).toEqual({ ok: true, value: 123450 });
    expect(readMoney('1.234,50 €', 'EUR')).toEqual({ ok: true, value: 123450 });
  });

  it('is null, not zero, when nothing is typed', () => {
    expect(readMoney('', 'USD')).toEqual({ ok: true, value: null });
    expect(readMoney('0', 'USD')).toEqual({ ok: true, value: 0 });
  });

  it('is refused below zero, with more decimals than the currency has, and when it could mean two things', () => {
    expect(readMoney('-1', 'USD')).toMatchObject({ ok: false });
    expect(readMoney('1.005', 'USD')).toMatchObject({ ok: false });
    expect(readMoney('1.5', 'JPY')).toMatchObject({ ok: false });
    expect(readMoney('1,220', 'USD')).toMatchObject({ ok: false });
    expect(readMoney('a lot', 'USD')).toMatchObject({ ok: false });
  });

  it('stands in its field as digits that read back the same', () => {
    expect(moneyInput(123450, 'USD')).toBe('1234.50');
    expect(moneyInput(1200, 'JPY')).toBe('1200');
    expect(moneyInput(null, 'USD')).toBe('');
    expect(readMoney(moneyInput(1234, 'BHD'), 'BHD')).toEqual({ ok: true, value: 1234 });
  });
});
