import { describe, expect, it } from 'vitest';
import {
  figureValueText,
  unitSymbol,
  usEquivalent,
} from '../../../client/screens/catalogue/figure-value-text.ts';
import type { ProductFigure } from '../../../server/planning/product.ts';

const figure = (
  low: number | null,
  typical: number | null,
  high: number | null,
  unit: string,
): ProductFigure => ({
  low,
  typical,
  high,
  unit,
  basis: 'label',
  source: 'can',
  readOn: null,
});

describe('a catalogue figure', () => {
  it('is printed with its range', () => {
    expect(figureValueText(figure(7.4, 9.8, 12.3, 'm2/L'), 'L')).toBe('9.8 m²/L, from 7.4 to 12.3');
    expect(figureValueText(figure(null, 18, null, 'mm'), 'pcs')).toBe('18 mm');
    expect(figureValueText(figure(480, 540, 600, 'min'), 'L')).toBe('9 h, from 8 h to 10 h');
    expect(figureValueText(figure(350, null, 450, 'g/L'), 'L')).toBe('from 350 to 450 g/L');
    expect(figureValueText(figure(null, 20, 25, 'C'), 'L')).toBe('20 °C, up to 25 °C');
  });

  it('is nothing when nothing is known', () => {
    expect(figureValueText(figure(null, null, null, 'g/L'), 'L')).toBeNull();
  });

  it('names rates in the unit of the product', () => {
    expect(unitSymbol('unit/m2', 'g')).toBe('g/m²');
    expect(unitSymbol('unit/m', 'L')).toBe('L/m');
  });

  it('says the same in US customary where the project uses it', () => {
    // 18 mm / 25.4 = 0.7087 in.
    expect(usEquivalent(figure(null, 18, null, 'mm'), 'us')).toBe('0.709"');
    expect(usEquivalent(figure(null, 18, null, 'mm'), 'metric')).toBeNull();
    expect(usEquivalent(figure(null, 60, null, 'min'), 'us')).toBeNull();
  });
});
