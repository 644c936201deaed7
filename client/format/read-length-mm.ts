import { APPROXIMATE_MARK, MM_PER_FOOT, MM_PER_INCH } from '../../server/planning/display/constants.ts';
import type { UnitSystem } from '../../server/planning/project-input.ts';
import { type Reading, refused, understood } from './reading.ts';

const MM_PER_UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  '"': MM_PER_INCH,
  ft: MM_PER_FOOT,
  "'": MM_PER_FOOT,
};

const AMOUNT = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*([1-9]\d*)$|^(\d+(?:[.,]\d*)?|[.,]\d+)$/;

/**
 * How many millimetres does a typed setting mean? A bare number is in the project's unit (millimetres or inches);
 * a unit written behind it wins. Takes decimals, fractions and mixed numbers. Part sizes are read by the server,
 * which knows far more ways of writing them; this serves the few lengths that travel as numbers.
 *
 * Example: "1 1/2" in an inch project and "38.1 mm" are both 38.1.
 */
export function readLengthMm(
  typed: string,
  units: UnitSystem,
  range: { readonly leastMm: number; readonly mostMm: number },
): Reading<number> {
  const text = plainMarks(typed);
  const [, amountText = '', unit = ''] = /^(.*?)\s*(mm|cm|m|in|ft|"|')?$/.exec(text) ?? [];
  const amount = readAmount(amountText);
  if (amount === null)
    return refused(
      units === 'metric'
        ? `"${typed.trim()}" is not a length. Write one such as 25 or 25 mm.`
        : `"${typed.trim()}" is not a length. Write one such as 1, 1/16" or 25 mm.`,
    );
  const perUnit = MM_PER_UNIT[unit === '' ? (units === 'metric' ? 'mm' : 'in') : unit] ?? 1;
  const mm = Number((amount * perUnit).toPrecision(12));
  if (!(mm >= range.leastMm && mm <= range.mostMm))
    return refused(`${typed.trim()} is outside what is allowed: ${range.leastMm} mm to ${range.mostMm} mm.`);
  return understood(mm);
}

function readAmount(text: string): number | null {
  const [match, whole, numerator, denominator, decimal] = AMOUNT.exec(text) ?? [];
  if (match === undefined || /^\d{1,3},\d{3}$/.test(match)) return null;
  if (decimal !== undefined) return Number(decimal.replace(',', '.'));
  return Number(whole ?? 0) + Number(numerator) / Number(denominator);
}

/** Curly and prime marks become the plain ones that keyboards have; what the program itself prints is taken too. */
function plainMarks(typed: string): string {
  return typed
    .trim()
    .toLowerCase()
    .replace(APPROXIMATE_MARK, '')
    .replaceAll(/[\u201c\u201d\u2033]|''/g, '"')
    .replaceAll(/[\u2018\u2019\u2032]/g, "'")
    .replace(/inch(es)?$/, 'in')
    .replace(/(feet|foot)$/, 'ft')
    .trim();
}
