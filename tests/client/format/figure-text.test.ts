import { describe, expect, it } from 'vitest';
import { canonicalText, figureText } from '../../../client/format/figure-text.ts';
import { METRIC, US } from './settings.ts';

describe('a figure as the project prints it', () => {
  it('prints every unit in metric', () => {
    expect(figureText(600, 'mm', METRIC)).toBe('600 mm');
    expect(figureText(21.336, 'm', METRIC)).toBe('21.34 m');
    expect(figureText(5.3055, 'm2', METRIC)).toBe('5.31 m²');
    expect(figureText(0.763, 'L', METRIC)).toBe('763 mL');
    expect(figureText(98.7, 'g', METRIC)).toBe('98.7 g');
    expect(figureText(1500, 'g', METRIC)).toBe('1.5 kg');
    expect(figureText(9.8, 'm2/L', METRIC)).toBe('9.8 m²/L');
    expect(figureText(40, 'C', METRIC)).toBe('40 °C');
    expect(figureText(33, 'um', METRIC)).toBe('33 µm');
    expect(figureText(12.5, 'percent', METRIC)).toBe('12.5 %');
    expect(figureText(360153, 'minor', METRIC)).toBe('€3,601.53');
  });

  it('prints every unit in US customary', () => {
    // 600 mm / 25.4 = 23.622 in; nearest 1/32 is 23 5/8 = 600.075 mm, 0.075 mm off, so marked.
    expect(figureText(600, 'mm', US)).toBe('≈23 5/8"');
    // 21.336 m / 0.3048 = 70 ft.
    expect(figureText(21.336, 'm', US)).toBe('70.0 ft');
    // 0.946352946 L is one US quart.
    expect(figureText(0.946352946, 'L', US)).toBe('1.00 qt');
    // 8.5898 m2/L x 3.785411784 / 0.09290304 = 350.0 ft2/gal.
    expect(figureText(8.5898, 'm2/L', US)).toBe('350 ft²/gal');
    // 20 x 9/5 + 32 = 68.
    expect(figureText(20, 'C', US)).toBe('68 °F');
    // 33.02 um / 25.4 = 1.3 mil.
    expect(figureText(33.02, 'um', US)).toBe('1.3 mil');
  });

  it('says unknown for null, never zero', () => {
    expect(figureText(null, 'L', METRIC)).toBe('unknown');
    expect(figureText(0, 'L', METRIC)).toBe('0 mL');
  });

  it('rounds a price that is no whole number of minor units instead of failing', () => {
    expect(figureText(899.5, 'minor', US)).toBe('$9.00');
  });
});

describe('the canonical figure beside it', () => {
  it('stands where the units differ', () => {
    expect(canonicalText(600, 'mm', US)).toBe('600 mm');
    expect(canonicalText(0.763, 'L', METRIC)).toBe('0.763 L');
    expect(canonicalText(150, 'min', METRIC)).toBe('150 min');
  });

  it('stands where it carries digits the printed figure rounds off', () => {
    expect(canonicalText(5.3055, 'm2', METRIC)).toBe('5.3055 m²');
  });

  it('is left out where it would say the same again', () => {
    expect(canonicalText(600, 'mm', METRIC)).toBeNull();
    expect(canonicalText(2.9, 'm', METRIC)).toBeNull();
    expect(canonicalText(20480, 'pcs', METRIC)).toBeNull();
    expect(canonicalText(360153, 'minor', METRIC)).toBeNull();
    expect(canonicalText(null, 'mm', US)).toBeNull();
  });
});
