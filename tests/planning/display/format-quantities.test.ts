import { describe, expect, it } from 'vitest';
import { fixedText, trimmedText } from '../../../server/planning/display/fixed-text.ts';
import { formatAmount } from '../../../server/planning/display/format-amount.ts';
import { formatArea } from '../../../server/planning/display/format-area.ts';
import { formatCount } from '../../../server/planning/display/format-count.ts';
import { formatMetres } from '../../../server/planning/display/format-metres.ts';
import { formatMoney } from '../../../server/planning/display/format-money.ts';
import { formatVolume } from '../../../server/planning/display/format-volume.ts';

const METRIC = { units: 'metric' } as const;
const US = { units: 'us' } as const;

describe('fixedText', () => {
  it('rounds half away from zero on the digits as written', () => {
    expect(fixedText(1.005, 2)).toBe('1.01'); // stored a hair below 1.005
    expect(fixedText(1.00499, 2)).toBe('1.00');
    expect(fixedText(-2.5, 0)).toBe('-3');
    expect(fixedText(2.5, 0)).toBe('3');
    expect(fixedText(1e-9, 2)).toBe('0.00');
    expect(fixedText(-1e-9, 2)).toBe('0.00');
    expect(fixedText(1e15, 1)).toBe('1000000000000000.0');
  });

  it('drops trailing zeros when asked, and never digits of a whole number', () => {
    expect(trimmedText(600, 1)).toBe('600');
    expect(trimmedText(100, 0)).toBe('100');
    expect(trimmedText(12.5, 3)).toBe('12.5');
  });

  it('refuses what is not finite', () => {
    expect(() => fixedText(Number.NaN, 1)).toThrow(RangeError);
  });
});

describe('formatMetres', () => {
  it('prints metres or feet', () => {
    expect(formatMetres(21.336, METRIC)).toBe('21.34 m');
    expect(formatMetres(21.336, US)).toBe('70.0 ft'); // 70 x 0.3048
    expect(formatMetres(0, US)).toBe('0.0 ft');
    expect(formatMetres(null, METRIC)).toBe('unknown');
  });
});

describe('formatArea', () => {
  it('prints square metres or square feet', () => {
    expect(formatArea(2.97289728, METRIC)).toBe('2.97 m²');
    expect(formatArea(2.97289728, US)).toBe('32.0 ft²'); // 8 x 4 ft: 32 x 0.09290304
    expect(formatArea(null, US)).toBe('unknown');
  });

  it('shows more decimals of a small area, so that an edge does not print as nothing', () => {
    expect(formatArea(0.0108, METRIC)).toBe('0.0108 m²'); // 600 mm x 18 mm
    expect(formatArea(0.1, METRIC)).toBe('0.10 m²');
    expect(formatArea(0.0999, METRIC)).toBe('0.0999 m²');
    expect(formatArea(0, METRIC)).toBe('0.00 m²');
  });
});

describe('formatVolume', () => {
  it('prints litres, and millilitres below one litre', () => {
    expect(formatVolume(1.25, METRIC)).toBe('1.25 L');
    expect(formatVolume(0.25, METRIC)).toBe('250 mL');
    expect(formatVolume(0.994, METRIC)).toBe('994 mL');
    expect(formatVolume(0.9996, METRIC)).toBe('1.00 L');
    expect(formatVolume(0.0004, METRIC)).toBe('0.4 mL');
    expect(formatVolume(0, METRIC)).toBe('0 mL');
  });

  it('prints gallons, quarts or fluid ounces, the largest that makes at least one', () => {
    // 1 US gallon = 231 in3 = 3.785411784 L exactly; a quart is a quarter, a fluid ounce a 128th.
    expect(formatVolume(3.785411784, US)).toBe('1.00 gal');
    expect(formatVolume(2 * 0.946352946, US)).toBe('2.00 qt');
    expect(formatVolume(0.946352946, US)).toBe('1.00 qt');
    expect(formatVolume(0.473176473, US)).toBe('16.0 fl oz');
    expect(formatVolume(0, US)).toBe('0.0 fl oz');
    expect(formatVolume(null, US)).toBe('unknown');
  });
});

describe('formatMoney', () => {
  it('prints as many decimals as ISO 4217 gives the currency', () => {
    expect(formatMoney(123_450, 'USD')).toBe('$1,234.50');
    expect(formatMoney(-5, 'USD')).toBe('-$0.05');
    expect(formatMoney(1234, 'JPY')).toBe('¥1,234');
    expect(formatMoney(1234, 'KWD').replace(/\u00a0/g, ' ')).toBe('KWD 1.234'); // three decimals
    expect(formatMoney(0, 'EUR')).toBe('€0.00');
    expect(formatMoney(-0, 'EUR')).toBe('€0.00');
    expect(formatMoney(null, 'EUR')).toBe('unknown');
  });

  it('follows the separators of a language when asked', () => {
    expect(formatMoney(123_450, 'EUR', 'de-DE').replace(/\u00a0/g, ' ')).toBe('1.234,50 €');
  });

  it('refuses parts of a minor unit and codes that are no currency', () => {
    expect(() => formatMoney(0.5, 'USD')).toThrow(RangeError);
    expect(() => formatMoney(1, 'dollars')).toThrow(RangeError);
  });
});

describe('formatCount', () => {
  it('groups large counts by a narrow space', () => {
    expect(formatCount(4)).toBe('4');
    expect(formatCount(9999)).toBe('9999');
    expect(formatCount(10_000)).toBe('10\u202f000');
    expect(formatCount(1_234_567)).toBe('1\u202f234\u202f567');
    expect(formatCount(2.5)).toBe('2.5');
    expect(formatCount(12_345.25)).toBe('12\u202f345.25');
    expect(formatCount(null)).toBe('unknown');
  });
});

describe('an amount of a product', () => {
  it('is printed in the project’s units where it is a liquid or a length, and as it is counted else', () => {
    // 1 US quart is 0.946352946 L, 70 ft are 21.336 m, both exact.
    const us = { units: 'us' } as const;
    const metric = { units: 'metric' } as const;
    expect(formatAmount(0.946352946, 'L', us)).toBe('1.00 qt');
    expect(formatAmount(0.4, 'L', metric)).toBe('400 mL');
    expect(formatAmount(21.336, 'm', us)).toBe('70.0 ft');
    expect(formatAmount(3, 'pcs', us)).toBe('3 pcs');
    expect(formatAmount(250, 'g', metric)).toBe('250 g');
    expect(formatAmount(null, 'L', metric)).toBe('unknown');
  });
});
