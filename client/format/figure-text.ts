import { L_PER_US_GALLON, M2_PER_FT2, UNKNOWN_TEXT } from '../../server/planning/display/constants.ts';
import { trimmedText } from '../../server/planning/display/fixed-text.ts';
import { formatAirflow } from '../../server/planning/display/format-airflow.ts';
import { formatArea } from '../../server/planning/display/format-area.ts';
import { formatCount } from '../../server/planning/display/format-count.ts';
import { formatLength } from '../../server/planning/display/format-length.ts';
import { formatMetres } from '../../server/planning/display/format-metres.ts';
import { formatMoney } from '../../server/planning/display/format-money.ts';
import { formatVolume } from '../../server/planning/display/format-volume.ts';
import type { FigureUnit } from '../../server/planning/figure.ts';
import type { ProjectSettings } from '../../server/planning/project-input.ts';
import { durationText } from './duration-text.ts';

/** The settings that say how figures are printed. */
export type PrintSettings = Pick<ProjectSettings, 'units' | 'inchStyle' | 'inchDenominator' | 'currency'>;

type Print = (value: number, settings: PrintSettings) => string;

/** Square feet per US gallon that one square metre per litre comes to. Exact conversions: 40.75. */
const FT2_PER_GALLON = L_PER_US_GALLON / M2_PER_FT2;
/** Micrometres in one mil, the thousandth of an inch. Exact. */
const UM_PER_MIL = 25.4;
const GRAMS_PER_KILOGRAM = 1000;
const W_PER_KW = 1000;
/** Cubic metres in a cubic foot. Exact: 0.3048 cubed. */
const M3_PER_FT3 = 0.028316846592;

const PRINTS: Readonly<Record<FigureUnit, Print>> = {
  mm: (value, settings) => formatLength(value, settings),
  m: (value, settings) => formatMetres(value, settings),
  m2: (value, settings) => formatArea(value, settings),
  L: (value, settings) => formatVolume(value, settings),
  g: (value) =>
    Math.abs(value) >= GRAMS_PER_KILOGRAM
      ? `${trimmedText(value / GRAMS_PER_KILOGRAM, 2)} kg`
      : `${trimmedText(value, 1)} g`,
  min: (value) => durationText(value),
  'm2/L': (value, { units }) =>
    units === 'metric'
      ? `${trimmedText(value, 2)} m²/L`
      : `${trimmedText(value * FT2_PER_GALLON, 0)} ft²/gal`,
  'g/L': (value) => `${trimmedText(value, 1)} g/L`,
  percent: (value) => `${trimmedText(value, 2)} %`,
  ratio: (value) => trimmedText(value, 3),
  pcs: (value) => formatCount(value),
  C: (value, { units }) =>
    units === 'metric' ? `${trimmedText(value, 1)} °C` : `${trimmedText((value * 9) / 5 + 32, 0)} °F`,
  um: (value, { units }) =>
    units === 'metric' ? `${trimmedText(value, 1)} µm` : `${trimmedText(value / UM_PER_MIL, 2)} mil`,
  m3: (value, { units }) =>
    units === 'metric' ? `${trimmedText(value, 1)} m³` : `${trimmedText(value / M3_PER_FT3, 0)} ft³`,
  'm3/h': (value, { units }) => formatAirflow(value, units),
  W: (value) =>
    Math.abs(value) >= W_PER_KW ? `${trimmedText(value / W_PER_KW, 1)} kW` : `${trimmedText(value, 0)} W`,
  kWh: (value) => `${trimmedText(value, 1)} kWh`,
  minor: (value, { currency }) =>
    Number.isSafeInteger(value) ? formatMoney(value, currency) : formatMoney(Math.round(value), currency),
};

/** A figure as the project prints it: in its units, its inch style and its currency; null is "unknown". */
export function figureText(value: number | null, unit: FigureUnit, settings: PrintSettings): string {
  return value === null ? UNKNOWN_TEXT : PRINTS[unit](value, settings);
}

/** Decimals that keep every digit a shop could care for, per canonical unit. */
const CANONICAL: Readonly<Record<Exclude<FigureUnit, 'minor'>, { symbol: string; decimals: number }>> = {
  mm: { symbol: 'mm', decimals: 2 },
  m: { symbol: 'm', decimals: 4 },
  m2: { symbol: 'm²', decimals: 4 },
  L: { symbol: 'L', decimals: 4 },
  g: { symbol: 'g', decimals: 1 },
  min: { symbol: 'min', decimals: 1 },
  'm2/L': { symbol: 'm²/L', decimals: 2 },
  'g/L': { symbol: 'g/L', decimals: 1 },
  percent: { symbol: '%', decimals: 2 },
  ratio: { symbol: '', decimals: 4 },
  pcs: { symbol: '', decimals: 2 },
  C: { symbol: '°C', decimals: 1 },
  um: { symbol: 'µm', decimals: 1 },
  m3: { symbol: 'm³', decimals: 2 },
  'm3/h': { symbol: 'm³/h', decimals: 1 },
  W: { symbol: 'W', decimals: 0 },
  kWh: { symbol: 'kWh', decimals: 2 },
};

/** The figure in the unit it is reckoned in, or null where that would say nothing new (money, unknown, same text). */
export function canonicalText(
  value: number | null,
  unit: FigureUnit,
  settings: PrintSettings,
): string | null {
  if (value === null || unit === 'minor') return null;
  const { symbol, decimals } = CANONICAL[unit];
  const text = `${trimmedText(value, decimals)}${symbol === '' ? '' : ` ${symbol}`}`;
  return sameFigure(text, figureText(value, unit, settings)) ? null : text;
}

/** "2.90 m" and "2.9 m" say the same; so do "20 480" with and without its space. */
function sameFigure(a: string, b: string): boolean {
  const [first, second] = [a, b].map((text) => text.replaceAll('\u202f', '').split(' '));
  if (first?.[1] !== second?.[1]) return false;
  return Number(first?.[0]) === Number(second?.[0]);
}
