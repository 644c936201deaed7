import { trimmedText } from '../../../server/planning/display/fixed-text.ts';
import type { ProductFigure, ProductUnit } from '../../../server/planning/product.ts';
import type { UnitSystem } from '../../../server/planning/project-input.ts';
import { durationText } from '../../format/duration-text.ts';
import { figureText } from '../../format/figure-text.ts';

/** Units of catalogue figures as they are printed; `unit` stands for the product's own unit. */
const SYMBOLS: Readonly<Record<string, string>> = {
  'm2/L': 'm²/L',
  m2: 'm²',
  percent: '%',
  um: 'µm',
  C: '°C',
  ratio: '×',
  months: 'months',
};

export function unitSymbol(unit: string, productUnit: ProductUnit): string {
  return (SYMBOLS[unit] ?? unit).replace('unit', productUnit).replace('/m2', '/m²');
}

/** "9.8 m²/L, from 7.4 to 12.3"; null where nothing is known. */
export function figureValueText(figure: ProductFigure, productUnit: ProductUnit): string | null {
  const { low, typical, high, unit } = figure;
  const symbol = unitSymbol(unit, productUnit);
  const bare = (value: number): string => (unit === 'min' ? durationText(value) : trimmedText(value, 2));
  const print = (value: number): string =>
    unit === 'min' ? durationText(value) : `${bare(value)} ${symbol}`;
  const ends =
    low === null && high === null
      ? ''
      : low === null
        ? `up to ${print(high as number)}`
        : high === null
          ? `from ${print(low)}`
          : `from ${bare(low)} to ${bare(high)}`;
  if (typical === null)
    return ends === ''
      ? null
      : low !== null && high !== null
        ? `${ends}${unit === 'min' ? '' : ` ${symbol}`}`
        : ends;
  return ends === '' ? print(typical) : `${print(typical)}, ${ends}`;
}

/** The typical value in US customary units where the project uses them and they differ; null otherwise. */
export function usEquivalent(figure: ProductFigure, units: UnitSystem): string | null {
  const { typical, unit } = figure;
  if (units !== 'us' || typical === null) return null;
  if (unit !== 'mm' && unit !== 'm2/L' && unit !== 'C' && unit !== 'um' && unit !== 'm2') return null;
  return figureText(typical, unit, {
    units: 'us',
    inchStyle: 'decimal',
    inchDenominator: 32,
    currency: 'USD',
  });
}
